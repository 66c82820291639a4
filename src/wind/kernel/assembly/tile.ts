/** The tile that is worked out, its wind, and what cells of it lie where. */
import { LANE_BYTES } from './layout';

/** Half a micrometre, so that cells exactly on a boundary fall the same way after a rotation. */
export const EDGE_M: f64 = 5e-7;

export let columns: i32 = 0;
export let rows: i32 = 0;
export let cellM: f64 = 1;
export let firstXM: f64 = 0;
/** Address of the rows' y, falling, in doubles. */
export let rowY: usize = 0;
/** Address of the deficits, four floats a cell. */
export let deficits: usize = 0;
export let upX: f64 = 0;
export let upY: f64 = 1;

/** Columns of a row that count: the first and the last. */
export let spanFrom: i32 = 0;
export let spanTo: i32 = 0;

/** First byte that whoever fills the memory may use. */
export function firstFreeByte(): usize {
  return (__heap_base + 15) & ~15;
}

export function setTile(
  tileColumns: i32,
  tileRows: i32,
  tileCellM: f64,
  tileFirstXM: f64,
  tileRowY: usize,
  tileDeficits: usize,
): void {
  columns = tileColumns;
  rows = tileRows;
  cellM = tileCellM;
  firstXM = tileFirstXM;
  rowY = tileRowY;
  deficits = tileDeficits;
}

/** The deficits that are laid on from now on: those of the tile, or a second set of as many. */
export function setDeficits(tileDeficits: usize): void {
  deficits = tileDeficits;
}

/** Unit vector towards where the wind comes from. */
export function setWind(x: f64, y: f64): void {
  upX = x;
  upY = y;
}

export function clearDeficits(): void {
  memory.fill(deficits, 0, (<usize>columns * <usize>rows) * LANE_BYTES);
}

@inline
export function alongWind(x: f64, y: f64): f64 {
  return -(x * upX + y * upY);
}

@inline
export function acrossWind(x: f64, y: f64): f64 {
  return x * upY - y * upX;
}

/** The span is all columns. */
@inline
export function wholeRow(): void {
  spanFrom = 0;
  spanTo = columns - 1;
}

/** Narrows the span to the columns where least <= g0 + column * slope <= greatest. */
export function clipColumns(g0: f64, slope: f64, least: f64, greatest: f64): void {
  if (Math.abs(slope) < 1e-12) {
    if (g0 < least || g0 > greatest) spanTo = spanFrom - 1;
    return;
  }
  const a = (least - g0) / slope;
  const b = (greatest - g0) / slope;
  const from = Math.ceil(slope > 0 ? a : b);
  const to = Math.floor(slope > 0 ? b : a);
  if (from > <f64>spanFrom) spanFrom = <i32>Math.min(from, <f64>(spanTo + 1));
  if (to < <f64>spanTo) spanTo = <i32>Math.max(to, <f64>(spanFrom - 1));
}

/** First row whose y can lie south of `northM`, with one to spare. */
export function rowFrom(northM: f64): i32 {
  return <i32>Math.max(0, Math.min(<f64>rows, Math.floor((load<f64>(rowY) - northM) / cellM)));
}

/** Last row whose y can lie north of `southM`, with one to spare. */
export function rowTo(southM: f64): i32 {
  return <i32>Math.min(<f64>(rows - 1), Math.max(-1, Math.ceil((load<f64>(rowY) - southM) / cellM)));
}

/** Four places of a table, each read between its nodes. */
@inline
export function readBetween(table: usize, at: v128): v128 {
  const node = i32x4.trunc_sat_f32x4_s(at);
  const bytes = i32x4.shl(node, 2);
  const n0 = table + <usize>i32x4.extract_lane(bytes, 0);
  const n1 = table + <usize>i32x4.extract_lane(bytes, 1);
  const n2 = table + <usize>i32x4.extract_lane(bytes, 2);
  const n3 = table + <usize>i32x4.extract_lane(bytes, 3);
  // Each node with the one after it.
  const p01 = v128.load64_lane(n1, v128.load64_zero(n0), 1);
  const p23 = v128.load64_lane(n3, v128.load64_zero(n2), 1);
  const near = v128.shuffle<f32>(p01, p23, 0, 2, 4, 6);
  const next = v128.shuffle<f32>(p01, p23, 1, 3, 5, 7);
  return f32x4.add(near, f32x4.mul(f32x4.sub(at, f32x4.convert_i32x4_s(node)), f32x4.sub(next, near)));
}
