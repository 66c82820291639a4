/** Shadows of prisms: the ring swept away from the sun, and in it each cell's exact path between the faces. */
import {
  PARALLEL,
  SOLID_DEPTH,
  address,
  clipEnd,
  clipFirst,
  faceStep,
  faceT,
  lanes,
  lay,
  rowY,
  setPerMetre,
  spanEnd,
  spanFirst,
  touch,
  touchedRow0,
  touchedRow1,
  word,
  zero,
} from './layers';
import {
  PLANE_BYTES,
  PRISM_A,
  PRISM_B,
  PRISM_BASE,
  PRISM_C,
  PRISM_CLASS,
  PRISM_CORNERS,
  PRISM_EAST,
  PRISM_HIGH_Z,
  PRISM_LOW_Z,
  PRISM_NORTH,
  PRISM_OFF,
  PRISM_ON,
  PRISM_RING,
  PRISM_SOLID,
  PRISM_SOUTH,
  PRISM_TOP,
  PRISM_WEST,
  RAY_SX,
  RAY_SY,
  RAY_TAN,
  RAY_UX,
  RAY_UY,
  RAY_UZ,
  TILE_CELL_M,
  TILE_COLUMNS,
  TILE_HIGHEST_Z,
  TILE_LOWEST_Z,
  TILE_NORTH,
  TILE_READING,
  TILE_ROWS,
  TILE_ROW_M,
  TILE_STRIDE,
  TILE_WEST,
} from './layout';

/** Widens the spans of the rows by one edge of a swept outline. A hair's breadth of slack: the clipping decides. */
@inline
function widen(
  x0: f64,
  y0: f64,
  x1: f64,
  y1: f64,
  row0: i32,
  row1: i32,
  columns: i32,
  west: f64,
  north: f64,
  invCell: f64,
  rowM: f64,
): void {
  const invRow = 1 / rowM;
  const from = <i32>max<f64>(row0, ceil((north - max(y0, y1)) * invRow - 0.5));
  const to = <i32>min<f64>(row1 - 1, floor((north - min(y0, y1)) * invRow - 0.5));
  const slope = y1 != y0 ? (x1 - x0) / (y1 - y0) : 0;
  for (let r = from; r <= to; r++) {
    const x = x0 + (north - (<f64>r + 0.5) * rowM - y0) * slope;
    const at = (x - west) * invCell - 0.5;
    const low = <i32>min<f64>(columns, max<f64>(0, ceil(at - 1e-9)));
    const high = <i32>min<f64>(columns, max<f64>(0, floor(at + 1e-9) + 1));
    if (low < load<i32>(spanFirst + 4 * r)) store<i32>(spanFirst + 4 * r, low);
    if (high > load<i32>(spanEnd + 4 * r)) store<i32>(spanEnd + 4 * r, high);
  }
}

export function castPrism(tile: usize, ray: usize, prism: usize, classCount: i32, into: usize, clip: i32): void {
  const tan = word(ray, RAY_TAN);
  const farM = (word(prism, PRISM_HIGH_Z) - word(tile, TILE_LOWEST_Z)) / tan;
  if (!(farM > 0)) return;
  const nearM = max<f64>(0, (word(prism, PRISM_LOW_Z) - word(tile, TILE_HIGHEST_Z)) / tan);
  const sx = word(ray, RAY_SX);
  const sy = word(ray, RAY_SY);
  const nearX = -sx * nearM;
  const nearY = -sy * nearM;
  const farX = -sx * farM;
  const farY = -sy * farM;
  const columns = <i32>word(tile, TILE_COLUMNS);
  const rows = <i32>word(tile, TILE_ROWS);
  const stride = <i32>word(tile, TILE_STRIDE);
  const cellM = word(tile, TILE_CELL_M);
  const rowM = word(tile, TILE_ROW_M);
  const west = word(tile, TILE_WEST);
  const north = word(tile, TILE_NORTH);
  const reading = address(tile, TILE_READING);
  const invCell = 1 / cellM;
  const invRow = 1 / rowM;
  let row0 = <i32>(
    max<f64>(0, ceil((north - word(prism, PRISM_NORTH) - max(nearY, farY)) * invRow - 0.5))
  );
  let row1 = <i32>(
    min<f64>(rows, floor((north - word(prism, PRISM_SOUTH) - min(nearY, farY)) * invRow - 0.5) + 1)
  );
  if (clip) {
    row0 = max(row0, touchedRow0);
    row1 = min(row1, touchedRow1);
  }
  if (row0 >= row1) return;
  if ((word(prism, PRISM_EAST) + max(nearX, farX) - west) * invCell < 0.5) return;
  if ((word(prism, PRISM_WEST) + min(nearX, farX) - west) * invCell > <f64>columns - 0.5) return;

  const solid = word(prism, PRISM_SOLID) != 0;
  const states = setPerMetre(
    ray,
    word(prism, PRISM_ON),
    word(prism, PRISM_OFF),
    <i32>word(prism, PRISM_CLASS),
    classCount,
  );
  const ring = address(prism, PRISM_RING);
  const corners = <i32>word(prism, PRISM_CORNERS);
  for (let r = row0; r < row1; r++) {
    store<i32>(spanFirst + 4 * r, columns);
    store<i32>(spanEnd + 4 * r, 0);
  }
  // The swept ring's outline is made of edges of the ring at both ends of the sweep and of courses of its corners.
  let px = load<f64>(ring + 16 * (corners - 1));
  let py = load<f64>(ring + 16 * (corners - 1) + 8);
  for (let k = 0; k < corners; k++) {
    const x = load<f64>(ring + 16 * k);
    const y = load<f64>(ring + 16 * k + 8);
    widen(px + nearX, py + nearY, x + nearX, y + nearY, row0, row1, columns, west, north, invCell, rowM);
    widen(px + farX, py + farY, x + farX, y + farY, row0, row1, columns, west, north, invCell, rowM);
    widen(x + nearX, y + nearY, x + farX, y + farY, row0, row1, columns, west, north, invCell, rowM);
    px = x;
    py = y;
  }

  const groundA = word(prism, PRISM_A);
  const slopeX = word(prism, PRISM_B);
  const slopeY = word(prism, PRISM_C);
  const base = word(prism, PRISM_BASE);
  const top = word(prism, PRISM_TOP);
  const ux = word(ray, RAY_UX);
  const uy = word(ray, RAY_UY);
  let climb = word(ray, RAY_UZ) - slopeX * ux - slopeY * uy;
  // A face this nearly parallel to the ray is given this speed instead, which puts its crossing out of reach.
  if (abs(climb) < PARALLEL) climb = PARALLEL;
  const invClimb = f32x4.splat(<f32>(1 / climb));
  const entry = f32x4.splat(<f32>(climb > 0 ? base : top));
  const exit = f32x4.splat(<f32>(climb > 0 ? top : base));
  const x0 = west + 0.5 * cellM;

  for (let r = row0; r < row1; r++) {
    let first = load<i32>(spanFirst + 4 * r);
    let end = load<i32>(spanEnd + 4 * r);
    if (clip) {
      first = clipFirst(r, first);
      end = clipEnd(r, end);
    }
    if (first >= end) continue;
    if (!clip) touch(r, first, end);
    const y = rowY(tile, r);
    // Entering faces are filed from the front, leaving faces from the back.
    let entering = 0;
    let leaving = corners;
    let ax = load<f64>(ring + 16 * (corners - 1));
    let ay = load<f64>(ring + 16 * (corners - 1) + 8);
    for (let k = 0; k < corners; k++) {
      const bx = load<f64>(ring + 16 * k);
      const by = load<f64>(ring + 16 * k + 8);
      const nx = by - ay;
      const ny = ax - bx;
      let speed = nx * ux + ny * uy;
      if (abs(speed) < PARALLEL) speed = PARALLEL;
      const slot = speed < 0 ? entering++ : --leaving;
      store<f32>(faceT + 4 * slot, <f32>(-(nx * (x0 - ax) + ny * (y - ay)) / speed));
      store<f32>(faceStep + 4 * slot, <f32>((-nx * cellM) / speed));
      ax = bx;
      ay = by;
    }
    const from = first & ~3;
    const readingRow = reading + 4 * (r * stride);
    const intoRow = into + 4 * (r * stride);
    const groundRow = f32x4.splat(<f32>(groundA + slopeX * x0 + slopeY * y));
    const groundStep = f32x4.splat(<f32>(slopeX * cellM));
    for (let c = from; c < end; c += 4) {
      const column = f32x4.add(f32x4.splat(<f32>c), lanes);
      const above = f32x4.sub(
        v128.load(readingRow + 4 * c),
        f32x4.add(groundRow, f32x4.mul(groundStep, column)),
      );
      let tIn = f32x4.pmax(zero, f32x4.mul(f32x4.sub(entry, above), invClimb));
      let tOut = f32x4.mul(f32x4.sub(exit, above), invClimb);
      for (let e = 0; e < entering; e++) {
        const t = f32x4.add(
          v128.load32_splat(faceT + 4 * e),
          f32x4.mul(v128.load32_splat(faceStep + 4 * e), column),
        );
        tIn = f32x4.pmax(tIn, t);
      }
      for (let e = leaving; e < corners; e++) {
        const t = f32x4.add(
          v128.load32_splat(faceT + 4 * e),
          f32x4.mul(v128.load32_splat(faceStep + 4 * e), column),
        );
        tOut = f32x4.pmin(tOut, t);
      }
      const path = f32x4.sub(tOut, tIn);
      if (solid) {
        const blocked = v128.and(f32x4.gt(path, zero), f32x4.splat(SOLID_DEPTH));
        const at = intoRow + 4 * c;
        for (let s = 0; s < states; s++) {
          const p = at + s * PLANE_BYTES;
          v128.store(p, f32x4.add(v128.load(p), blocked));
        }
      } else lay(f32x4.pmax(zero, path), intoRow + 4 * c, states);
    }
  }
}
