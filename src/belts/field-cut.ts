import type { Frame } from '../geo/frame.ts';
import { localBoxOf } from '../geo/local-box.ts';
import { cellsInside, ringToLocal } from '../geo/rasterise.ts';
import { cellCount, type GridSpec, gridCovering } from '../numeric/grid.ts';
import type { FieldFeature } from '../site/records/field.ts';
import type { ShelterResult } from '../wind/shelter-types.ts';

/** A field on a grid coarse enough that one look at it costs little. */
export interface FieldGrid {
  readonly grid: GridSpec;
  readonly mask: Uint8Array;
}

/** @param across cells along the longer side. */
export function fieldGrid(field: FieldFeature, frame: Frame, across: number): FieldGrid {
  const places = field.geometry.coordinates[0].map(([lon, lat]) => [lon, lat] as const);
  // A ring has at least four places.
  const box = localBoxOf(frame, places)!;
  const cellM = Math.max(1, Math.max(box.east - box.west, box.north - box.south) / across);
  const grid = gridCovering(box, cellM);
  const rings = field.geometry.coordinates.map((ring) => ringToLocal(frame, ring));
  return { grid, mask: cellsInside(grid, rings) };
}

export interface FieldCut {
  /** Mean share by which the wind of the growing season is cut. */
  readonly meanCut: number;
  /** Share of the field on which it is cut by 30 % or more. */
  readonly protectedShare: number;
}

/** Over the cells of a field, growing season. */
export function fieldCut({ windShare, grid }: ShelterResult, mask: Uint8Array, cutShare: number): FieldCut {
  let counted = 0;
  let sum = 0;
  let enough = 0;
  for (let cell = 0; cell < cellCount(grid); cell++) {
    const share = windShare[cell];
    if (!mask[cell] || Number.isNaN(share)) continue;
    counted++;
    sum += 1 - share;
    if (1 - share >= cutShare) enough++;
  }
  return counted > 0
    ? { meanCut: sum / counted, protectedShare: enough / counted }
    : { meanCut: 0, protectedShare: 0 };
}
