/** What comes after all is laid: the shape of the land, several belts multiplied, and the sums of the seasons. */
import { GALE_NODES, LANE_BYTES, SEASON_BYTES } from './layout';
import {
  columns,
  deficits,
  readBetween,
  rows,
  upX,
  upY,
} from './tile';

/**
 * Multiplies what is left of the wind on each cell by what the shape of the land makes of it, within bounds; a deficit
 * below 0 is a wind faster than open.
 * @param relief address of three coefficients a cell (see relief.ts), floats.
 */
export function applyRelief(relief: usize, least: f32, most: f32): void {
  const ee = <f32>(upX * upX);
  const en = <f32>(2 * upX * upY);
  const nn = <f32>(upY * upY);
  const one = f32x4.splat(1);
  const cells = columns * rows;
  let out = deficits;
  for (let cell = 0; cell < cells; cell++, out += LANE_BYTES, relief += 12) {
    const change = ee * load<f32>(relief) + en * load<f32>(relief, 4) + nn * load<f32>(relief, 8);
    const share = Mathf.min(most, Mathf.max(least, <f32>1 + change));
    const left = f32x4.mul(f32x4.sub(one, v128.load(out)), f32x4.splat(share));
    v128.store(out, f32x4.sub(one, left));
  }
}

/** Multiplies the shares that two sets of deficits leave, 1 - d = (1 - d1) (1 - d2), into the tile's. */
export function chainDeficits(second: usize): void {
  const cells = columns * rows;
  let out = deficits;
  for (let cell = 0; cell < cells; cell++, out += LANE_BYTES, second += LANE_BYTES) {
    const d1 = v128.load(out);
    const d2 = v128.load(second);
    v128.store(out, f32x4.add(d1, f32x4.sub(d2, f32x4.mul(d1, d2))));
  }
}

/**
 * Adds one direction over the cells of the tile to a season's sums, or to those of two seasons.
 * @param seasons how many; what each adds follows, see SEASON_BYTES.
 */
export function addDirection(seasons: i32, first: usize): void {
  const second = first + SEASON_BYTES;
  let at = deficits;
  const cells = columns * rows;
  for (let cell = 0; cell < cells; cell++, at += LANE_BYTES) {
    const deficit = v128.load(at);
    if (!v128.any_true(f32x4.ne(deficit, f32x4.splat(0)))) continue;
    const share = f32x4.mul(f32x4.sub(f32x4.splat(1), deficit), f32x4.splat(<f32>GALE_NODES));
    addCell(first, cell, deficit, share);
    if (seasons > 1) addCell(second, cell, deficit, share);
  }
}

/** Adds one cell to one season's sums. @param share of the open wind that is left, in nodes of the table. */
@inline
function addCell(season: usize, cell: i32, deficit: v128, share: v128): void {
  const speed = <usize>load<i32>(season) + <usize>cell * LANE_BYTES;
  v128.store(speed, f32x4.add(v128.load(speed), f32x4.mul(v128.load(season, 16), deficit)));
  const table = <usize>load<i32>(season, 8);
  if (!table) return;
  const gale = <usize>load<i32>(season, 4) + (<usize>cell << 2);
  const open = load<f32>(table, GALE_NODES * 4);
  const change = f32x4.mul(v128.load(season, 32), f32x4.sub(readBetween(table, share), f32x4.splat(open)));
  const half = f32x4.add(change, v128.shuffle<f32>(change, change, 2, 3, 0, 1));
  store<f32>(gale, load<f32>(gale) + f32x4.extract_lane(half, 0) + f32x4.extract_lane(half, 1));
}
