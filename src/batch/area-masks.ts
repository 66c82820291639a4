import type { Frame, LonLat } from '../geo/frame.ts';
import { polygonAreaM2 } from '../geo/geodesic.ts';
import { cellsInside, ringToLocal } from '../geo/rasterise.ts';
import { cellCount, type GridSpec } from '../numeric/grid.ts';
import type { FieldFeature } from '../site/records/field.ts';

/** An area of which figures are given: its name, its geodesic size, and the cells of the grid inside it. */
export interface MaskedArea {
  readonly id: string | number;
  readonly name: string;
  readonly areaM2: number;
  readonly mask: Uint8Array;
}

/** The cells whose centres lie in a field. */
export function fieldMask(field: FieldFeature, frame: Frame, grid: GridSpec): MaskedArea {
  const rings = field.geometry.coordinates.map((ring) => ring.map(([lon, lat]): LonLat => [lon, lat]));
  return {
    id: field.id,
    name: field.properties.name ?? `Field ${field.id}`,
    areaM2: polygonAreaM2(rings),
    mask: cellsInside(
      grid,
      rings.map((ring) => ringToLocal(frame, ring)),
    ),
  };
}

/**
 * A mask on a small grid carried to a larger one of the same cells; null where the small one reaches beyond it or
 * does not fall on its cells.
 */
export function maskOnGrid(mask: Uint8Array, from: GridSpec, to: GridSpec): Uint8Array | null {
  if (Math.abs(from.cellM - to.cellM) > 1e-9) return null;
  const column = (from.westM - to.westM) / to.cellM;
  const row = (to.northM - from.northM) / to.cellM;
  const c0 = Math.round(column);
  const r0 = Math.round(row);
  if (Math.abs(column - c0) > 1e-6 || Math.abs(row - r0) > 1e-6) return null;
  if (c0 < 0 || r0 < 0 || c0 + from.columns > to.columns || r0 + from.rows > to.rows) return null;
  const carried = new Uint8Array(cellCount(to));
  for (let r = 0; r < from.rows; r++)
    carried.set(mask.subarray(r * from.columns, (r + 1) * from.columns), (r0 + r) * to.columns + c0);
  return carried;
}
