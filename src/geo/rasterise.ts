import { cellCount, type GridSpec } from '../numeric/grid.ts';
import type { Frame, LocalXY, LonLat } from './frame.ts';
import { toLocal, toLonLat } from './frame.ts';
import { boxAround } from './local-box.ts';

export const ringToLocal = (frame: Frame, ring: readonly (readonly number[])[]): LocalXY[] =>
  ring.map((position) => toLocal(frame, [position[0], position[1]]));

export const ringToLonLat = (frame: Frame, ring: readonly LocalXY[]): LonLat[] =>
  ring.map((xy) => toLonLat(frame, xy));

/**
 * Every cell whose centre lies inside the polygon, row by row.
 * Even-odd rule over all rings, so holes need no particular direction; rings may repeat their first point or not.
 * A centre exactly on a side counts for one of two neighbouring polygons that share the side, never for both.
 * @param rings outer ring and holes, local metres.
 */
export function forEachInside(
  spec: GridSpec,
  rings: readonly (readonly LocalXY[])[],
  visit: (cell: number) => void,
): void {
  const { columns, rows, cellM, westM, northM } = spec;
  const box = boxAround(rings.flat());
  if (!box) return;
  const firstRow = Math.max(0, Math.floor((northM - box.north) / cellM - 0.5));
  const pastRow = Math.min(rows, Math.ceil((northM - box.south) / cellM + 0.5));
  const crossings: number[] = [];
  for (let r = firstRow; r < pastRow; r++) {
    const yM = northM - (r + 0.5) * cellM;
    crossings.length = 0;
    for (const ring of rings) {
      for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
        const [xi, yi] = ring[i];
        const [xj, yj] = ring[j];
        if (yi > yM !== yj > yM) crossings.push(xi + ((yM - yi) * (xj - xi)) / (yj - yi));
      }
    }
    crossings.sort((a, b) => a - b);
    for (let k = 0; k + 1 < crossings.length; k += 2) {
      const from = Math.max(0, Math.ceil((crossings[k] - westM) / cellM - 0.5));
      const past = Math.min(columns, Math.ceil((crossings[k + 1] - westM) / cellM - 0.5));
      for (let c = from; c < past; c++) visit(r * columns + c);
    }
  }
}

/** 1 for every cell whose centre lies inside the polygon, else 0; row-major as the grid (see forEachInside). */
export function cellsInside(
  spec: GridSpec,
  rings: readonly (readonly LocalXY[])[],
  mask: Uint8Array = new Uint8Array(cellCount(spec)),
): Uint8Array {
  forEachInside(spec, rings, (cell) => {
    mask[cell] = 1;
  });
  return mask;
}
