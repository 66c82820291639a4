/**
 * The hot code of the light engine, compiled to WebAssembly with four-wide float arithmetic. (AssemblyScript: a
 * dialect of TypeScript with machine types. `npm run kernel` compiles it; a test fails where the bytes are older.)
 *
 * For one tile of cells and one ray direction: the optical depth of everything between the cells and that point of
 * the sky, laid over one another, and what it takes out of the light: 1 - exp(-depth). A shadow in plan is the thing's
 * outline swept away from the sun; each cell within gets its exact path through the thing (the closed forms of
 * crowns/path-length.ts and crowns/prism-path.ts, from where the cell's own elevation puts it). What is constant along
 * a row of cells is worked out in double precision, so that a cell's value does not depend on the tile it lies in.
 *
 * Two layers of depth, A and B, are empty between rays. Cells that nothing shades are never touched.
 */
import { castCrown } from './crown-shadows';
import {
  SOLID_DEPTH,
  address,
  clipEnd,
  clipFirst,
  lay,
  layerA,
  layerB,
  setPerMetre,
  touch,
  touchedRow0,
  touchedRow1,
  word,
} from './layers';
import {
  CROWN_WORDS,
  PLANE_BYTES,
  PRISM_WORDS,
  RAY_SLOTS,
  RAY_STATES,
  RAY_SX,
  RAY_SY,
  RAY_TAN,
  THINGS_CROWNS,
  THINGS_CROWN_COUNT,
  THINGS_PRISMS,
  THINGS_ROUND,
  THINGS_ROUND_BYTES,
  TILE_COLUMNS,
  TILE_LOWEST_Z,
  TILE_ROWS,
  TILE_STRIDE,
  TILE_SUMS,
} from './layout';
import { castPrism } from './prism-shadows';
import { halfAlong, halfAside, lookAtShadows, lookAtTile, middleAlong, middleAside } from './reach';

export { anyTouched, empty, firstFreeByte, mostCorners, touchedBox, wipe } from './layers';
export { addChange, addLosses, combine, lossesOf, sumGains } from './sums';

/**
 * Lays the things from index `first` up to `end` on layer A (0) or B (1); a scene's crowns come before its prisms.
 * @param hand 0: lays them anywhere, and what is shaded is touched. A list of things: only on the cells touched before,
 * which are those in that list's shadows, and touches nothing. @param handCount how many they are.
 */
export function cast(
  tile: usize,
  ray: usize,
  things: usize,
  first: i32,
  end: i32,
  classCount: i32,
  layer: i32,
  hand: usize,
  handCount: i32,
): void {
  const clip = <i32>(hand != 0);
  if (first >= end || (clip && touchedRow0 >= touchedRow1)) return;
  const into = layer ? layerB : layerA;
  const crowns = address(things, THINGS_CROWNS);
  const prisms = address(things, THINGS_PRISMS);
  const crownCount = <i32>word(things, THINGS_CROWN_COUNT);
  const round = address(things, THINGS_ROUND);
  const plane = address(things, THINGS_ROUND_BYTES);

  // Only what stands beside or before the cells that count, as the ray sees them, can shade them.
  lookAtTile(tile, ray);
  if (clip) lookAtShadows(tile, ray, hand, handCount);
  const sx4 = f32x4.splat(<f32>word(ray, RAY_SX));
  const sy4 = f32x4.splat(<f32>word(ray, RAY_SY));
  const across = f32x4.splat(<f32>middleAside);
  const halfAcross4 = f32x4.splat(<f32>halfAside);
  const along = f32x4.splat(<f32>middleAlong);
  const halfAlong4 = f32x4.splat(<f32>halfAlong);
  const tan4 = f32x4.splat(<f32>word(ray, RAY_TAN));
  const lowest = f32x4.splat(<f32>word(tile, TILE_LOWEST_Z));
  for (let i = first; i < end; i += 4) {
    const at = round + 4 * i;
    const px = v128.load(at);
    const py = v128.load(at + plane);
    const r = v128.load(at + 2 * plane);
    const top = v128.load(at + 3 * plane);
    const aside = f32x4.abs(f32x4.sub(f32x4.sub(f32x4.mul(px, sy4), f32x4.mul(py, sx4)), across));
    const ahead = f32x4.sub(f32x4.add(f32x4.mul(px, sx4), f32x4.mul(py, sy4)), along);
    const reach = f32x4.add(halfAlong4, r);
    let near = i32x4.bitmask(
      v128.and(
        v128.and(
          f32x4.le(aside, f32x4.add(halfAcross4, r)),
          f32x4.ge(ahead, f32x4.neg(reach)),
        ),
        f32x4.le(f32x4.mul(f32x4.sub(ahead, reach), tan4), f32x4.sub(top, lowest)),
      ),
    );
    while (near) {
      const k = i + ctz(near);
      near &= near - 1;
      if (k >= end) break;
      if (k < crownCount) castCrown(tile, ray, crowns + 8 * CROWN_WORDS * k, classCount, into, clip);
      else castPrism(tile, ray, prisms + 8 * PRISM_WORDS * (k - crownCount), classCount, into, clip);
    }
  }
}

/**
 * Blocks the cells whose view is behind the land. @param behind a byte a cell, 1 where it is.
 * @param landSlots slots from here on take the weights of slots 0 to 11, so that open hours know the land; -1: none
 * @param clip as in `cast`
 */
export function blockByLand(tile: usize, ray: usize, behind: usize, landSlots: i32, clip: i32): void {
  const columns = <i32>word(tile, TILE_COLUMNS);
  const rows = <i32>word(tile, TILE_ROWS);
  const stride = <i32>word(tile, TILE_STRIDE);
  const states = <i32>word(ray, RAY_STATES);
  const lastRow = clip ? touchedRow1 : rows;
  for (let r = clip ? touchedRow0 : 0; r < lastRow; r++) {
    let first = 0;
    let end = columns;
    if (clip) {
      first = clipFirst(r, first);
      end = clipEnd(r, end);
    }
    if (first >= end) continue;
    if (!clip) touch(r, first, end);
    for (let c = first; c < end; c++) {
      const i = r * stride + c;
      if (!load<u8>(behind + i)) continue;
      for (let s = 0; s < states; s++) {
        const p = layerA + s * PLANE_BYTES + 4 * i;
        store<f32>(p, load<f32>(p) + SOLID_DEPTH);
      }
    }
  }
  if (landSlots < 0) return;
  let list = address(ray, RAY_SLOTS);
  const sums = address(tile, TILE_SUMS);
  for (let s = 0; s < states; s++) {
    const count = load<i32>(list);
    list += 4;
    for (let k = 0; k < count; k++, list += 8) {
      const slot = load<i32>(list);
      if (slot >= 12 * PLANE_BYTES) continue;
      const weight = load<f32>(list + 4);
      const sum = sums + landSlots * PLANE_BYTES + slot;
      for (let i = 0; i < rows * stride; i++)
        if (load<u8>(behind + i)) store<f32>(sum + 4 * i, load<f32>(sum + 4 * i) + weight);
    }
  }
}

/** Lays metres of path through foliage of one kind on layer A. @param path a float a cell; @param clip as in `cast` */
export function layPath(
  tile: usize,
  ray: usize,
  path: usize,
  on: f64,
  off: f64,
  leafClass: i32,
  classCount: i32,
  clip: i32,
): void {
  const columns = <i32>word(tile, TILE_COLUMNS);
  const rows = <i32>word(tile, TILE_ROWS);
  const stride = <i32>word(tile, TILE_STRIDE);
  const states = setPerMetre(ray, on, off, leafClass, classCount);
  const lastRow = clip ? touchedRow1 : rows;
  for (let r = clip ? touchedRow0 : 0; r < lastRow; r++) {
    let first = 0;
    let end = columns;
    if (clip) {
      first = clipFirst(r, first);
      end = clipEnd(r, end);
    }
    if (first >= end) continue;
    if (!clip) touch(r, first, end);
    for (let c = first & ~3; c < end; c += 4)
      lay(v128.load(path + 4 * (r * stride + c)), layerA + 4 * (r * stride + c), states);
  }
}
