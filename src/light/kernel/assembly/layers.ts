/**
 * What lies over the cells of a tile for one ray: two layers of optical depth by leaf state, A and B, empty between
 * rays, and which cells were touched. Cells that nothing shades never are.
 */
import {
  EDGE,
  MOST_STATES,
  PLANE_BYTES,
  RAY_LEAF,
  RAY_STATES,
  TILE_CELL_M,
  TILE_GRID_NORTH,
  TILE_ROW0,
  TILE_ROWS,
  TILE_ROW_STEP,
  TILE_STRIDE,
} from './layout';

/** Depth of something solid: opaque, and small enough that foliage beside it keeps its digits. */
export const SOLID_DEPTH: f32 = 1024;
export const PARALLEL: f64 = 1e-12;
/** Along a row or across it, to all intents. */
export const LEVEL: f64 = 1e-9;
export const FAR: f64 = 1e30;
const FACES = 256;

export const layerA: usize = memory.data(PLANE_BYTES * MOST_STATES, 16);
export const layerB: usize = memory.data(PLANE_BYTES * MOST_STATES, 16);
/** Touched cells of each row: first and end, and the box of all. */
export const touchedFirst: usize = memory.data(4 * EDGE, 16);
export const touchedEnd: usize = memory.data(4 * EDGE, 16);
/** Depth per metre by leaf state of the thing in hand. */
export const perMetre: usize = memory.data(4 * MOST_STATES, 16);
/** Cells of each row that a prism may shade, and its faces along a row. */
export const spanFirst: usize = memory.data(4 * EDGE, 16);
export const spanEnd: usize = memory.data(4 * EDGE, 16);
export const faceT: usize = memory.data(4 * FACES, 16);
export const faceStep: usize = memory.data(4 * FACES, 16);

export const lanes: v128 = f32x4(0, 1, 2, 3);
export const zero: v128 = f32x4(0, 0, 0, 0);
export const one: v128 = f32x4(1, 1, 1, 1);
export const four: v128 = f32x4(4, 4, 4, 4);

export let touchedRow0: i32 = EDGE;
export let touchedRow1: i32 = 0;

/** First byte that whoever fills the memory may use. */
export function firstFreeByte(): usize {
  return (__heap_base + 15) & ~15;
}

/** The most corners a prism may have. */
export function mostCorners(): i32 {
  return FACES;
}

@inline
export function word(record: usize, index: i32): f64 {
  return load<f64>(record + 8 * (<usize>index));
}

@inline
export function address(record: usize, index: i32): usize {
  return <usize>load<f64>(record + 8 * (<usize>index));
}

/**
 * Share of light taken out by four depths >= 0: 1 - exp(-depth), within 3e-6 and 0 at 0. exp as 2^whole * 2^part: a
 * number far larger than the whole rounds it to the lowest bits; 2^part by a polynomial, least worst error on
 * [-0.5, 0.5] with 1 at 0.
 */
@inline
export function lossOf(depth: v128): v128 {
  const t = f32x4.pmax(f32x4.mul(depth, f32x4.splat(-1.44269504)), f32x4.splat(-126));
  const whole = f32x4.add(t, f32x4.splat(12582912));
  const f = f32x4.sub(t, f32x4.sub(whole, f32x4.splat(12582912)));
  let p = f32x4.add(f32x4.mul(f, f32x4.splat(0.0095828555)), f32x4.splat(0.0559064253));
  p = f32x4.add(f32x4.mul(p, f), f32x4.splat(0.240240986));
  p = f32x4.add(f32x4.mul(p, f), f32x4.splat(0.693124193));
  p = f32x4.add(f32x4.mul(p, f), one);
  return f32x4.sub(one, i32x4.add(p, i32x4.shl(whole, 23)));
}

export function empty(rows: i32): void {
  for (let r = 0; r < rows; r++) {
    store<i32>(touchedFirst + 4 * r, EDGE);
    store<i32>(touchedEnd + 4 * r, 0);
  }
  touchedRow0 = EDGE;
  touchedRow1 = 0;
}

/** Forgets what was touched; the layers are empty. */
export function forget(): void {
  for (let r = touchedRow0; r < touchedRow1; r++) {
    store<i32>(touchedFirst + 4 * r, EDGE);
    store<i32>(touchedEnd + 4 * r, 0);
  }
  touchedRow0 = EDGE;
  touchedRow1 = 0;
}

@inline
export function touch(row: i32, first: i32, end: i32): void {
  if (first < load<i32>(touchedFirst + 4 * row)) store<i32>(touchedFirst + 4 * row, first);
  if (end > load<i32>(touchedEnd + 4 * row)) store<i32>(touchedEnd + 4 * row, end);
  if (row < touchedRow0) touchedRow0 = row;
  if (row >= touchedRow1) touchedRow1 = row + 1;
}

export function setPerMetre(ray: usize, on: f64, off: f64, leafClass: i32, classCount: i32): i32 {
  const states = <i32>word(ray, RAY_STATES);
  const leaf = address(ray, RAY_LEAF);
  for (let s = 0; s < states; s++) {
    const share = <f64>load<f32>(leaf + 4 * (s * classCount + leafClass));
    store<f32>(perMetre + 4 * s, <f32>(share * on + (1 - share) * off));
  }
  return states;
}

/**
 * y of a row of cells, from the grid's own edge and the row's number in the grid: the same to the last digit in
 * whichever tile the row lies.
 */
@inline
export function rowY(tile: usize, r: i32): f64 {
  const row = word(tile, TILE_ROW0) + word(tile, TILE_ROW_STEP) * <f64>r;
  return word(tile, TILE_GRID_NORTH) - (row + 0.5) * word(tile, TILE_CELL_M);
}

@inline
function layOne(path: v128, at: usize, depth: usize): void {
  v128.store(at, f32x4.add(v128.load(at), f32x4.mul(v128.load32_splat(depth), path)));
}

/** Adds a path's depth to every leaf state of four cells. Three at a time: most rays have one to three, or six. */
@inline
export function lay(path: v128, at: usize, states: i32): void {
  let depth = perMetre;
  let left = states;
  for (; left >= 3; left -= 3) {
    layOne(path, at, depth);
    layOne(path, at + PLANE_BYTES, depth + 4);
    layOne(path, at + 2 * PLANE_BYTES, depth + 8);
    at += 3 * PLANE_BYTES;
    depth += 12;
  }
  if (left == 0) return;
  layOne(path, at, depth);
  if (left == 2) layOne(path, at + PLANE_BYTES, depth + 4);
}

@inline
export function clipFirst(row: i32, first: i32): i32 {
  return max(first, load<i32>(touchedFirst + 4 * row));
}

@inline
export function clipEnd(row: i32, end: i32): i32 {
  return min(end, load<i32>(touchedEnd + 4 * row));
}

/** Empties layer A, whatever is known to be touched. */
export function wipe(tile: usize, ray: usize): void {
  const bytes = 4 * (<i32>word(tile, TILE_STRIDE)) * (<i32>word(tile, TILE_ROWS));
  const states = <i32>word(ray, RAY_STATES);
  for (let s = 0; s < states; s++) memory.fill(layerA + s * PLANE_BYTES, 0, bytes);
  empty(<i32>word(tile, TILE_ROWS));
}

/** Whether anything is touched. */
export function anyTouched(): bool {
  return touchedRow0 < touchedRow1;
}

/** The box of the touched cells, four integers: first row, past the last, first column, past the last. */
export function touchedBox(out: usize): void {
  let column0 = EDGE;
  let column1 = 0;
  for (let r = touchedRow0; r < touchedRow1; r++) {
    column0 = min(column0, load<i32>(touchedFirst + 4 * r));
    column1 = max(column1, load<i32>(touchedEnd + 4 * r));
  }
  store<i32>(out, touchedRow0);
  store<i32>(out + 4, touchedRow1);
  store<i32>(out + 8, column0);
  store<i32>(out + 12, column1);
}
