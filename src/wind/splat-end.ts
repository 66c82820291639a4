import {
  acrossWind,
  alongWind,
  clipColumns,
  clipRows,
  EDGE_M,
  type ShelterTile,
  type WindRay,
} from './shelter-tile.ts';

/** The wind beside an end is up to 20 % faster (Reid & Bird 1990; no extent is published). */
const MOST_GAIN = 0.2;
/** Our guess: how far the faster wind reaches, in heights. */
const ASIDE_H = 2;
const UPWIND_H = 2;
const DOWNWIND_H = 5;
/** A deficit this small is open wind: the barrier function runs out towards 1 without quite reaching it. */
const OPEN_DEFICIT = 0.002;

/** The outermost point of a connected thing, seen along the wind. */
export interface WindwardEnd {
  readonly xM: number;
  readonly yM: number;
  readonly heightM: number;
  /** 1: the thing ends to the right of someone who faces the wind; -1: to the left. */
  readonly side: 1 | -1;
  /** What the end is worth: (1 - p) with all factors. */
  readonly strength: number;
}

/**
 * Speeds the wind up beside one end: 0.2 * strength at the end, falling linearly to nothing 2 H sideways, 2 H upwind
 * and 5 H downwind, only on cells where every barrier leaves the wind open. Mutates `out` (negative deficits).
 */
export function splatEnd(tile: ShelterTile, ray: WindRay, end: WindwardEnd, out: Float32Array): void {
  const { heightM, side } = end;
  const gain = MOST_GAIN * end.strength;
  if (!(gain > 0)) return;
  const s1 = acrossWind(ray, end.xM, end.yM);
  const t1 = alongWind(ray, end.xM, end.yM);
  const reach = (ASIDE_H + DOWNWIND_H) * heightM;
  const [firstRow, lastRow] = clipRows(tile, end.yM - reach, end.yM + reach);
  const ds = tile.cellM * ray.upY * side;
  const dt = -tile.cellM * ray.upX;
  const span = new Int32Array(2);
  for (let row = firstRow; row <= lastRow; row++) {
    const y = tile.rowYM[row];
    const aside0 = (acrossWind(ray, tile.firstXM, y) - s1) * side;
    const d0 = alongWind(ray, tile.firstXM, y) - t1;
    span[0] = 0;
    span[1] = tile.columns - 1;
    clipColumns(span, aside0, ds, EDGE_M, ASIDE_H * heightM);
    clipColumns(span, d0, dt, -UPWIND_H * heightM, DOWNWIND_H * heightM);
    const base = row * tile.columns;
    for (let c = span[0]; c <= span[1]; c++) {
      if (out[base + c] > OPEN_DEFICIT) continue;
      const aside = 1 - (aside0 + c * ds) / (ASIDE_H * heightM);
      const d = (d0 + c * dt) / heightM;
      const along = d < 0 ? 1 + d / UPWIND_H : 1 - d / DOWNWIND_H;
      const value = -gain * aside * along;
      if (value < out[base + c]) out[base + c] = value;
    }
  }
}
