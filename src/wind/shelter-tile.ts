import { cellCentreX, cellCentreY, type GridSpec } from '../numeric/grid.ts';

/** A few rows of the computed grid: small enough to stay in the processor's cache. */
export interface ShelterTile {
  readonly columns: number;
  readonly rows: number;
  readonly cellM: number;
  /** x of the first column's centres. */
  readonly firstXM: number;
  /** y of each row's centres, falling. */
  readonly rowYM: Float64Array;
  /** First cell of the tile in the whole grid. */
  readonly firstCell: number;
}

const CELLS_A_TILE = 1 << 17;

/** Micrometres: a row has the same y whether it is asked for alone or as part of a larger grid. */
const rounded = (m: number): number => Math.round(m * 1e6) / 1e6;

export function shelterTiles(grid: GridSpec): ShelterTile[] {
  const rowsATile = Math.max(1, Math.floor(CELLS_A_TILE / grid.columns));
  const tiles: ShelterTile[] = [];
  for (let top = 0; top < grid.rows; top += rowsATile) {
    const rows = Math.min(rowsATile, grid.rows - top);
    tiles.push({
      columns: grid.columns,
      rows,
      cellM: grid.cellM,
      firstXM: rounded(cellCentreX(grid, 0)),
      rowYM: Float64Array.from({ length: rows }, (_, r) => rounded(cellCentreY(grid, top + r))),
      firstCell: top * grid.columns,
    });
  }
  return tiles;
}

/**
 * A wind blowing over the tile. Along-wind distance t = -(x upX + y upY) grows downwind; across-wind distance
 * s = x upY - y upX grows to the right of someone who faces the wind.
 */
export interface WindRay {
  /** Unit vector towards where the wind comes from, local x and y. */
  readonly upX: number;
  readonly upY: number;
}

export const windRay = (fromGridRad: number): WindRay => ({
  upX: Math.sin(fromGridRad),
  upY: Math.cos(fromGridRad),
});
export const alongWind = (ray: WindRay, x: number, y: number): number => -(x * ray.upX + y * ray.upY);
export const acrossWind = (ray: WindRay, x: number, y: number): number => x * ray.upY - y * ray.upX;

/** Half a micrometre, so that cells exactly on a boundary fall the same way after a rotation. */
export const EDGE_M = 5e-7;

/** Narrows the columns span[0]..span[1] to those where least <= g0 + column * slope <= greatest. Mutates `span`. */
export function clipColumns(
  span: Int32Array,
  g0: number,
  slope: number,
  least: number,
  greatest: number,
): void {
  if (Math.abs(slope) < 1e-12) {
    if (g0 < least || g0 > greatest) span[1] = span[0] - 1;
    return;
  }
  const a = (least - g0) / slope;
  const b = (greatest - g0) / slope;
  const from = Math.ceil(slope > 0 ? a : b);
  const to = Math.floor(slope > 0 ? b : a);
  if (from > span[0]) span[0] = Math.min(from, span[1] + 1);
  if (to < span[1]) span[1] = Math.max(to, span[0] - 1);
}

/** First and last row whose y can lie between two values, a row to spare on either side. */
export function clipRows(tile: ShelterTile, southM: number, northM: number): readonly [number, number] {
  const top = tile.rowYM[0];
  return [
    Math.max(0, Math.floor((top - northM) / tile.cellM)),
    Math.min(tile.rows - 1, Math.ceil((top - southM) / tile.cellM)),
  ];
}
