/**
 * The hot code of the light engine, compiled to WebAssembly with four-wide float arithmetic. (AssemblyScript: a
 * dialect of TypeScript with machine types. `npm run kernel` compiles it; a test fails where the bytes are older.)
 *
 * For one tile of cells and one ray direction: the optical depth of everything between the cells and that point of
 * the sky, laid over one another, and what it takes out of the light: 1 - exp(-depth). A shadow in plan is the thing's
 * outline swept away from the sun; each cell within gets its exact path through the thing (the closed forms of
 * crowns/path-length.ts and crowns/prism-path.ts, from where the cell's own elevation puts it). What is constant along a row of cells is
 * worked out in double precision, so that a cell's value does not depend on the tile it happens to lie in.
 *
 * Two layers of depth, A and B, are empty between rays. Cells that nothing shades are never touched.
 */
import {
  CROWN_BASE_Z,
  CROWN_CLASS,
  CROWN_FOOT_Z,
  CROWN_FORM,
  CROWN_OFF,
  CROWN_ON,
  CROWN_RADIUS,
  CROWN_TOP_Z,
  CROWN_WORDS,
  CROWN_X,
  CROWN_Y,
  EDGE,
  MOST_STATES,
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
  PRISM_WORDS,
  RAY_LEAF,
  RAY_SLOTS,
  RAY_STATES,
  RAY_SX,
  RAY_SY,
  RAY_TAN,
  RAY_UX,
  RAY_UY,
  RAY_UZ,
  TILE_CELL_M,
  TILE_COLUMNS,
  THINGS_CROWN_COUNT,
  THINGS_CROWNS,
  THINGS_PRISMS,
  THINGS_ROUND,
  THINGS_ROUND_BYTES,
  TILE_GRID_NORTH,
  TILE_HIGHEST_Z,
  TILE_LOWEST_Z,
  TILE_NORTH,
  TILE_READING,
  TILE_ROW0,
  TILE_ROW_M,
  TILE_ROW_STEP,
  TILE_ROWS,
  TILE_STRIDE,
  TILE_SUMS,
  TILE_WEST,
} from './layout';

/** Depth of something solid: opaque, and small enough that foliage beside it keeps its digits. */
const SOLID_DEPTH: f32 = 1024;
const PARALLEL: f64 = 1e-12;
/** Along a row or across it, to all intents. */
const LEVEL: f64 = 1e-9;
const FAR: f64 = 1e30;
const FACES = 256;

const layerA: usize = memory.data(PLANE_BYTES * MOST_STATES, 16);
const layerB: usize = memory.data(PLANE_BYTES * MOST_STATES, 16);
/** Touched cells of each row: first and end, and the box of all. */
const touchedFirst: usize = memory.data(4 * EDGE, 16);
const touchedEnd: usize = memory.data(4 * EDGE, 16);
/** Depth per metre by leaf state of the thing in hand. */
const perMetre: usize = memory.data(4 * MOST_STATES, 16);
/** Cells of each row that a prism may shade, and its faces along a row. */
const spanFirst: usize = memory.data(4 * EDGE, 16);
const spanEnd: usize = memory.data(4 * EDGE, 16);
const faceT: usize = memory.data(4 * FACES, 16);
const faceStep: usize = memory.data(4 * FACES, 16);

const lanes: v128 = f32x4(0, 1, 2, 3);
const zero: v128 = f32x4(0, 0, 0, 0);
const one: v128 = f32x4(1, 1, 1, 1);
const four: v128 = f32x4(4, 4, 4, 4);

let touchedRow0: i32 = EDGE;
let touchedRow1: i32 = 0;

/** First byte that whoever fills the memory may use. */
export function firstFreeByte(): usize {
  return (__heap_base + 15) & ~15;
}

/** The most corners a prism may have. */
export function mostCorners(): i32 {
  return FACES;
}

// @ts-expect-error: decorator
@inline
function word(record: usize, index: i32): f64 {
  return load<f64>(record + 8 * (<usize>index));
}

// @ts-expect-error: decorator
@inline
function address(record: usize, index: i32): usize {
  return <usize>load<f64>(record + 8 * (<usize>index));
}

/**
 * Share of light taken out by four depths >= 0: 1 - exp(-depth), within 3e-6 and 0 at 0. exp as 2^whole * 2^part: a
 * number far larger than the whole rounds it to the lowest bits; 2^part by a polynomial, least worst error on
 * [-0.5, 0.5] with 1 at 0.
 */
// @ts-expect-error: decorator
@inline
function lossOf(depth: v128): v128 {
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

// @ts-expect-error: decorator
@inline
function touch(row: i32, first: i32, end: i32): void {
  if (first < load<i32>(touchedFirst + 4 * row)) store<i32>(touchedFirst + 4 * row, first);
  if (end > load<i32>(touchedEnd + 4 * row)) store<i32>(touchedEnd + 4 * row, end);
  if (row < touchedRow0) touchedRow0 = row;
  if (row >= touchedRow1) touchedRow1 = row + 1;
}

function setPerMetre(ray: usize, on: f64, off: f64, leafClass: i32, classCount: i32): i32 {
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
// @ts-expect-error: decorator
@inline
function rowY(tile: usize, r: i32): f64 {
  const row = word(tile, TILE_ROW0) + word(tile, TILE_ROW_STEP) * <f64>r;
  return word(tile, TILE_GRID_NORTH) - (row + 0.5) * word(tile, TILE_CELL_M);
}

// @ts-expect-error: decorator
@inline
function layOne(path: v128, at: usize, depth: usize): void {
  v128.store(at, f32x4.add(v128.load(at), f32x4.mul(v128.load32_splat(depth), path)));
}

/** Adds a path's depth to every leaf state of four cells. Three at a time: most rays have one to three, or six. */
// @ts-expect-error: decorator
@inline
function lay(path: v128, at: usize, states: i32): void {
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

// @ts-expect-error: decorator
@inline
function clipFirst(row: i32, first: i32): i32 {
  return max(first, load<i32>(touchedFirst + 4 * row));
}

// @ts-expect-error: decorator
@inline
function clipEnd(row: i32, end: i32): i32 {
  return min(end, load<i32>(touchedEnd + 4 * row));
}

/** What a ray sees of a box of cells, or of the shadows in it: how far it reaches aside and along, from the middle. */
let middleAside: f64 = 0;
let halfAside: f64 = 0;
let middleAlong: f64 = 0;
let halfAlong: f64 = 0;

function lookAtTile(tile: usize, ray: usize): void {
  const sx = word(ray, RAY_SX);
  const sy = word(ray, RAY_SY);
  const halfX = 0.5 * word(tile, TILE_CELL_M) * word(tile, TILE_COLUMNS);
  const halfY = 0.5 * word(tile, TILE_ROW_M) * word(tile, TILE_ROWS);
  const x = word(tile, TILE_WEST) + halfX;
  const y = word(tile, TILE_NORTH) - halfY;
  middleAside = x * sy - y * sx;
  halfAside = abs(sy) * halfX + abs(sx) * halfY;
  middleAlong = x * sx + y * sy;
  halfAlong = abs(sx) * halfX + abs(sy) * halfY;
}

/** Narrows what is looked at to where a list of things can throw its shadows. */
function lookAtShadows(tile: usize, ray: usize, things: usize, count: i32): void {
  const sx = <f32>word(ray, RAY_SX);
  const sy = <f32>word(ray, RAY_SY);
  const tan = <f32>word(ray, RAY_TAN);
  const lowest = <f32>word(tile, TILE_LOWEST_Z);
  const round = address(things, THINGS_ROUND);
  const list = address(things, THINGS_ROUND_BYTES);
  let left: f32 = f32.MAX_VALUE;
  let right: f32 = -f32.MAX_VALUE;
  let far: f32 = f32.MAX_VALUE;
  let near: f32 = -f32.MAX_VALUE;
  for (let k = 0; k < count; k++) {
    const at = round + 4 * k;
    const x = load<f32>(at);
    const y = load<f32>(at + list);
    const r = load<f32>(at + 2 * list);
    const aside = x * sy - y * sx;
    const along = x * sx + y * sy;
    left = min(left, aside - r);
    right = max(right, aside + r);
    near = max(near, along + r);
    far = min(far, along - r - max<f32>(0, load<f32>(at + 3 * list) - lowest) / tan);
  }
  const from = max<f64>(left, middleAside - halfAside);
  const to = min<f64>(right, middleAside + halfAside);
  middleAside = 0.5 * (from + to);
  halfAside = 0.5 * (to - from);
  const back = max<f64>(far, middleAlong - halfAlong);
  const front = min<f64>(near, middleAlong + halfAlong);
  middleAlong = 0.5 * (back + front);
  halfAlong = 0.5 * (front - back);
}

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

function castCrown(tile: usize, ray: usize, crown: usize, classCount: i32, into: usize, clip: i32): void {
  const tan = word(ray, RAY_TAN);
  const baseZ = word(crown, CROWN_BASE_Z);
  const topZ = word(crown, CROWN_TOP_Z);
  const farM = (topZ - word(tile, TILE_LOWEST_Z)) / tan;
  if (!(farM > 0)) return;
  const nearM = max<f64>(0, (baseZ - word(tile, TILE_HIGHEST_Z)) / tan);
  const radius = word(crown, CROWN_RADIUS);
  const x = word(crown, CROWN_X);
  const y = word(crown, CROWN_Y);
  const sx = word(ray, RAY_SX);
  const sy = word(ray, RAY_SY);
  const ax = x - sx * nearM;
  const ay = y - sy * nearM;
  const bx = x - sx * farM;
  const by = y - sy * farM;

  const columns = <i32>word(tile, TILE_COLUMNS);
  const rows = <i32>word(tile, TILE_ROWS);
  const cellM = word(tile, TILE_CELL_M);
  const rowM = word(tile, TILE_ROW_M);
  const west = word(tile, TILE_WEST);
  const north = word(tile, TILE_NORTH);
  const lastColumn = <f64>(columns - 1);
  const invCell = 1 / cellM;
  const invRow = 1 / rowM;
  // Comparisons instead of max and min, which WebAssembly makes slow for the sake of numbers that are none.
  const top = (north - (sy < 0 ? by : ay) - radius) * invRow - 0.5;
  const bottom = (north - (sy < 0 ? ay : by) + radius) * invRow - 0.5;
  let row0 = top > 0 ? <i32>ceil(top) : 0;
  let row1 = bottom < 0 ? 0 : bottom < <f64>(rows - 1) ? <i32>bottom + 1 : rows;
  if (clip) {
    row0 = max(row0, touchedRow0);
    row1 = min(row1, touchedRow1);
  }
  if (row0 >= row1) return;
  if (((sx < 0 ? bx : ax) + radius - west) * invCell < 0.5) return;
  if (((sx < 0 ? ax : bx) - radius - west) * invCell > <f64>columns - 0.5) return;

  const states = setPerMetre(
    ray,
    word(crown, CROWN_ON),
    word(crown, CROWN_OFF),
    <i32>word(crown, CROWN_CLASS),
    classCount,
  );
  // The rectangle about the swept circle: between its flanks, and from its nearest point to its furthest.
  const flanks = abs(sy) > LEVEL ? 1 / sy : 0;
  const ends = abs(sx) > LEVEL ? 1 / sx : 0;
  const wide = flanks != 0 ? radius * abs(flanks) : FAR;
  const middle = x * sy - y * sx;
  const near = ends > 0 ? bx * sx + by * sy - radius : ax * sx + ay * sy + radius;
  const far = ends > 0 ? ax * sx + ay * sy + radius : bx * sx + by * sy - radius;
  for (let r = row0; r < row1; r++) {
    const cy = north - (<f64>r + 0.5) * rowM;
    const centre = (middle + cy * sx) * flanks;
    let low = centre - wide;
    let high = centre + wide;
    if (ends != 0) {
      const from = (near - cy * sy) * ends;
      const to = (far - cy * sy) * ends;
      low = low > from ? low : from;
      high = high < to ? high : to;
    }
    low = (low - west) * invCell - 0.5;
    high = (high - west) * invCell - 0.5;
    let first = low > 0 ? <i32>ceil(low) : 0;
    let end = high < 0 ? 0 : high < lastColumn ? <i32>high + 1 : columns;
    if (clip) {
      first = clipFirst(r, first);
      end = clipEnd(r, end);
    }
    store<i32>(spanFirst + 4 * r, first);
    store<i32>(spanEnd + 4 * r, end);
    if (!clip && first < end) touch(r, first, end);
  }

  // A ray may start anywhere along itself: it is taken from as far back as the middle of the shadow on level ground
  // lies from the crown, so that no digits are lost there. What lies before the cell itself does not count.
  const backM = max<f64>(0, (0.5 * (baseZ + topZ) - word(crown, CROWN_FOOT_Z)) / tan);
  const form = <i32>word(crown, CROWN_FORM);
  if (form < 2) layEllipsoid(tile, ray, crown, row0, row1, backM, into, states, form == 1);
  else if (form == 2) layCone(tile, ray, crown, row0, row1, backM, into, states);
  else layCylinder(tile, ray, crown, row0, row1, backM, into, states);
}

/** Lays an ellipsoid, or a dome: the upper half of one, standing on its base. */
function layEllipsoid(
  tile: usize,
  ray: usize,
  crown: usize,
  row0: i32,
  row1: i32,
  backM: f64,
  into: usize,
  states: i32,
  dome: bool,
): void {
  const stride = <i32>word(tile, TILE_STRIDE);
  const cellM = word(tile, TILE_CELL_M);
  const reading = address(tile, TILE_READING);
  const sx = word(ray, RAY_SX);
  const sy = word(ray, RAY_SY);
  const baseZ = word(crown, CROWN_BASE_Z);
  const radius = word(crown, CROWN_RADIUS);
  const lengthM = word(crown, CROWN_TOP_Z) - baseZ;
  const invRadius = 1 / radius;
  const half = dome ? lengthM : 0.5 * lengthM;
  const invHalf = 1 / half;
  const centreZ = dome ? baseZ : baseZ + half;
  // The axes are drawn out until the ellipsoid is a sphere of radius one; lengths along the ray are counted there.
  const vx = word(ray, RAY_UX) * invRadius;
  const vy = word(ray, RAY_UY) * invRadius;
  const vz = word(ray, RAY_UZ) * invHalf;
  const aMetre = sqrt(vx * vx + vy * vy + vz * vz);
  const wy = vy / aMetre;
  const wz = vz / aMetre;
  const invPlan = 1 / sqrt(word(ray, RAY_UX) * word(ray, RAY_UX) + word(ray, RAY_UY) * word(ray, RAY_UY));
  const x0 = f32x4.splat(
    <f32>((word(tile, TILE_WEST) + 0.5 * cellM - word(crown, CROWN_X) + sx * backM) * invRadius),
  );
  const xStep = f32x4.splat(<f32>(cellM * invRadius));
  const zz = f32x4.splat(<f32>invHalf);
  const z0 = f32x4.splat(<f32>((word(ray, RAY_TAN) * backM - centreZ) * invHalf));
  const wx4 = f32x4.splat(<f32>(vx / aMetre));
  const wz4 = f32x4.splat(<f32>wz);
  const invWz = f32x4.splat(<f32>(1 / wz));
  const start = f32x4.splat(<f32>(backM * invPlan * aMetre));
  for (let s = 0; s < states; s++)
    store<f32>(perMetre + 4 * s, <f32>(load<f32>(perMetre + 4 * s) / aMetre));
  const y = word(crown, CROWN_Y);
  for (let r = row0; r < row1; r++) {
    const end = load<i32>(spanEnd + 4 * r);
    const from = load<i32>(spanFirst + 4 * r) & ~3;
    if (from >= end) continue;
    const qy = rowY(tile, r) - y;
    const yy = (qy + sy * backM) * invRadius;
    const rest = f32x4.splat(<f32>(1 - yy * yy));
    const yw = f32x4.splat(<f32>(yy * wy));
    // Beyond the circle in plan the whole crown lies ahead of the cell.
    const ahead = abs(qy) > radius;
    const readingRow = reading + 4 * (r * stride);
    const intoRow = into + 4 * (r * stride);
    let column = f32x4.add(f32x4.splat(<f32>from), lanes);
    for (let c = from; c < end; c += 4) {
      const px = f32x4.add(x0, f32x4.mul(column, xStep));
      const pz = f32x4.add(z0, f32x4.mul(v128.load(readingRow + 4 * c), zz));
      const b = f32x4.add(f32x4.add(f32x4.mul(px, wx4), yw), f32x4.mul(pz, wz4));
      const m = f32x4.add(
        f32x4.sub(rest, f32x4.add(f32x4.mul(px, px), f32x4.mul(pz, pz))),
        f32x4.mul(b, b),
      );
      const after = f32x4.sqrt(f32x4.pmax(zero, m));
      // As far before the point closest to the centre as after it, unless the base or the cell comes first.
      let before = after;
      if (dome) before = f32x4.pmin(before, f32x4.sub(f32x4.mul(pz, invWz), b));
      if (!ahead) before = f32x4.pmin(before, f32x4.sub(start, b));
      lay(f32x4.pmax(zero, f32x4.add(after, before)), intoRow + 4 * c, states);
      column = f32x4.add(column, four);
    }
  }
}

function layCone(
  tile: usize,
  ray: usize,
  crown: usize,
  row0: i32,
  row1: i32,
  backM: f64,
  into: usize,
  states: i32,
): void {
  const stride = <i32>word(tile, TILE_STRIDE);
  const cellM = word(tile, TILE_CELL_M);
  const reading = address(tile, TILE_READING);
  const ux = word(ray, RAY_UX);
  const uy = word(ray, RAY_UY);
  const uz = word(ray, RAY_UZ);
  const topZ = word(crown, CROWN_TOP_Z);
  const lengthM = topZ - word(crown, CROWN_BASE_Z);
  const spread = word(crown, CROWN_RADIUS) / lengthM;
  const k = spread * spread;
  const invPlan = 1 / sqrt(ux * ux + uy * uy);
  let a2 = ux * ux + uy * uy - k * uz * uz;
  if (abs(a2) < 1e-7) a2 = a2 < 0 ? -1e-7 : 1e-7;
  const a = f32x4.splat(<f32>a2);
  const invA = f32x4.splat(<f32>(1 / a2));
  const ux4 = f32x4.splat(<f32>ux);
  const kuz = f32x4.splat(<f32>(k * uz));
  const kk = f32x4.splat(<f32>k);
  const top = f32x4.splat(<f32>(word(ray, RAY_TAN) * backM - topZ));
  const length = f32x4.splat(<f32>lengthM);
  const invUz = f32x4.splat(<f32>(1 / uz));
  const cell = f32x4.splat(<f32>(-backM * invPlan));
  const x0 = f32x4.splat(
    <f32>(word(tile, TILE_WEST) + 0.5 * cellM - word(crown, CROWN_X) + word(ray, RAY_SX) * backM),
  );
  const xStep = f32x4.splat(<f32>cellM);
  const y = word(crown, CROWN_Y) - word(ray, RAY_SY) * backM;
  for (let r = row0; r < row1; r++) {
    const end = load<i32>(spanEnd + 4 * r);
    const from = load<i32>(spanFirst + 4 * r) & ~3;
    if (from >= end) continue;
    const qy = rowY(tile, r) - y;
    const qyuy = f32x4.splat(<f32>(qy * uy));
    const qy2 = f32x4.splat(<f32>(qy * qy));
    const readingRow = reading + 4 * (r * stride);
    const intoRow = into + 4 * (r * stride);
    let column = f32x4.add(f32x4.splat(<f32>from), lanes);
    for (let c = from; c < end; c += 4) {
      const qx = f32x4.add(x0, f32x4.mul(column, xStep));
      const qz = f32x4.add(v128.load(readingRow + 4 * c), top);
      const b = f32x4.sub(f32x4.add(f32x4.mul(qx, ux4), qyuy), f32x4.mul(kuz, qz));
      const cc = f32x4.sub(f32x4.add(f32x4.mul(qx, qx), qy2), f32x4.mul(kk, f32x4.mul(qz, qz)));
      const disc = f32x4.sub(f32x4.mul(b, b), f32x4.mul(a, cc));
      const s = f32x4.sqrt(f32x4.pmax(zero, disc));
      // q / a and c / q are the two roots without cancellation.
      const q = v128.bitselect(f32x4.neg(f32x4.add(b, s)), f32x4.sub(s, b), f32x4.ge(b, zero));
      const t1 = f32x4.mul(q, invA);
      const t2 = f32x4.div(cc, q);
      let tIn = f32x4.pmax(f32x4.mul(f32x4.neg(f32x4.add(length, qz)), invUz), cell);
      let tOut = f32x4.mul(f32x4.neg(qz), invUz);
      if (a2 > 0) tIn = f32x4.pmax(tIn, f32x4.pmin(t1, t2));
      // Steeper than the flank: inside the lower nappe until the first root met going up.
      tOut = f32x4.pmin(tOut, a2 > 0 ? f32x4.pmax(t1, t2) : f32x4.pmin(t1, t2));
      const path = v128.and(f32x4.pmax(zero, f32x4.sub(tOut, tIn)), f32x4.gt(disc, zero));
      lay(path, intoRow + 4 * c, states);
      column = f32x4.add(column, four);
    }
  }
}

function layCylinder(
  tile: usize,
  ray: usize,
  crown: usize,
  row0: i32,
  row1: i32,
  backM: f64,
  into: usize,
  states: i32,
): void {
  const stride = <i32>word(tile, TILE_STRIDE);
  const cellM = word(tile, TILE_CELL_M);
  const reading = address(tile, TILE_READING);
  const sx = word(ray, RAY_SX);
  const sy = word(ray, RAY_SY);
  const tan = word(ray, RAY_TAN);
  const radius = word(crown, CROWN_RADIUS);
  const invRadius = 1 / radius;
  const perRise = invRadius / tan;
  // Lengths are counted in plan and in radii: the ray passes the axis at `aside`.
  const invPlan =
    1 / sqrt(word(ray, RAY_UX) * word(ray, RAY_UX) + word(ray, RAY_UY) * word(ray, RAY_UY));
  for (let s = 0; s < states; s++)
    store<f32>(perMetre + 4 * s, <f32>(load<f32>(perMetre + 4 * s) * radius * invPlan));
  const x0 = f32x4.splat(
    <f32>((word(tile, TILE_WEST) + 0.5 * cellM - word(crown, CROWN_X) + sx * backM) * invRadius),
  );
  const xStep = f32x4.splat(<f32>(cellM * invRadius));
  const sx4 = f32x4.splat(<f32>sx);
  const sy4 = f32x4.splat(<f32>sy);
  const perRise4 = f32x4.splat(<f32>perRise);
  const toTop = f32x4.splat(<f32>((word(crown, CROWN_TOP_Z) - tan * backM) * perRise));
  const toBase = f32x4.splat(<f32>((word(crown, CROWN_BASE_Z) - tan * backM) * perRise));
  const start = f32x4.splat(<f32>(backM * invRadius));
  const y = word(crown, CROWN_Y);
  for (let r = row0; r < row1; r++) {
    const end = load<i32>(spanEnd + 4 * r);
    const from = load<i32>(spanFirst + 4 * r) & ~3;
    if (from >= end) continue;
    const qy = rowY(tile, r) - y;
    const yy = (qy + sy * backM) * invRadius;
    const ysx = f32x4.splat(<f32>(yy * sx));
    const ysy = f32x4.splat(<f32>(yy * sy));
    const ahead = abs(qy) > radius;
    const readingRow = reading + 4 * (r * stride);
    const intoRow = into + 4 * (r * stride);
    let column = f32x4.add(f32x4.splat(<f32>from), lanes);
    for (let c = from; c < end; c += 4) {
      const px = f32x4.add(x0, f32x4.mul(column, xStep));
      const z = f32x4.mul(v128.load(readingRow + 4 * c), perRise4);
      const aside = f32x4.sub(f32x4.mul(px, sy4), ysx);
      const b = f32x4.add(f32x4.mul(px, sx4), ysy);
      const s = f32x4.sqrt(f32x4.pmax(zero, f32x4.sub(one, f32x4.mul(aside, aside))));
      const after = f32x4.pmin(f32x4.sub(s, b), f32x4.sub(toTop, z));
      let before = f32x4.pmin(f32x4.add(s, b), f32x4.sub(z, toBase));
      if (!ahead) before = f32x4.pmin(before, start);
      lay(f32x4.pmax(zero, f32x4.add(after, before)), intoRow + 4 * c, states);
      column = f32x4.add(column, four);
    }
  }
}

/** Widens the spans of the rows by one edge of a swept outline. A hair's breadth of slack: the clipping decides. */
// @ts-expect-error: decorator
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

function castPrism(tile: usize, ray: usize, prism: usize, classCount: i32, into: usize, clip: i32): void {
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

/** Adds what layer A takes, times what the ray counts for, to the tile's sums; empties the layer. */
export function addLosses(tile: usize, ray: usize): void {
  const stride = <i32>word(tile, TILE_STRIDE);
  const states = <i32>word(ray, RAY_STATES);
  const sums = address(tile, TILE_SUMS);
  let list = address(ray, RAY_SLOTS);
  for (let s = 0; s < states; s++) {
    const count = load<i32>(list);
    list += 4;
    const listEnd = list + 8 * count;
    const layer = layerA + s * PLANE_BYTES;
    for (let r = touchedRow0; r < touchedRow1; r++) {
      const rowEnd = load<i32>(touchedEnd + 4 * r);
      let i = 4 * (r * stride + (load<i32>(touchedFirst + 4 * r) & ~3));
      const end = 4 * (r * stride + rowEnd);
      if (count == 1) {
        const sum = sums + load<i32>(list);
        const weight = v128.load32_splat(list + 4);
        for (; i < end; i += 16) {
          const loss = lossOf(v128.load(layer + i));
          v128.store(layer + i, zero);
          v128.store(sum + i, f32x4.add(v128.load(sum + i), f32x4.mul(weight, loss)));
        }
        continue;
      }
      for (; i < end; i += 16) {
        const loss = lossOf(v128.load(layer + i));
        v128.store(layer + i, zero);
        for (let l = list; l < listEnd; l += 8) add(sums + load<i32>(l) + i, l + 4, loss);
      }
    }
    list = listEnd;
  }
  forget();
}

// @ts-expect-error: decorator
@inline
function add(sum: usize, weight: usize, loss: v128): void {
  v128.store(sum, f32x4.add(v128.load(sum), f32x4.mul(v128.load32_splat(weight), loss)));
}

/** Adds `sign` times what layer B takes from the light that layer A leaves to the tile's sums; empties both. */
export function addChange(tile: usize, ray: usize, sign: f32): void {
  const stride = <i32>word(tile, TILE_STRIDE);
  const states = <i32>word(ray, RAY_STATES);
  const sums = address(tile, TILE_SUMS);
  let list = address(ray, RAY_SLOTS);
  const signs = f32x4.splat(sign);
  for (let s = 0; s < states; s++) {
    const count = load<i32>(list);
    list += 4;
    const listEnd = list + 8 * count;
    const restLayer = layerA + s * PLANE_BYTES;
    const ownLayer = layerB + s * PLANE_BYTES;
    for (let r = touchedRow0; r < touchedRow1; r++) {
      const end = 4 * (r * stride + load<i32>(touchedEnd + 4 * r));
      for (let i = 4 * (r * stride + (load<i32>(touchedFirst + 4 * r) & ~3)); i < end; i += 16) {
        const rest = v128.load(restLayer + i);
        const own = v128.load(ownLayer + i);
        v128.store(restLayer + i, zero);
        v128.store(ownLayer + i, zero);
        const taken = f32x4.mul(f32x4.mul(f32x4.sub(one, lossOf(rest)), lossOf(own)), signs);
        for (let l = list; l < listEnd; l += 8) add(sums + load<i32>(l) + i, l + 4, taken);
      }
    }
    list = listEnd;
  }
  forget();
}

/** Forgets what was touched; the layers are empty. */
function forget(): void {
  for (let r = touchedRow0; r < touchedRow1; r++) {
    store<i32>(touchedFirst + 4 * r, EDGE);
    store<i32>(touchedEnd + 4 * r, 0);
  }
  touchedRow0 = EDGE;
  touchedRow1 = 0;
}

/** Writes what layer A takes in leaf state `state`, a float a cell (0 where nothing stands); the layer stays. */
export function lossesOf(tile: usize, state: i32, out: usize): void {
  const stride = <i32>word(tile, TILE_STRIDE);
  const rows = <i32>word(tile, TILE_ROWS);
  memory.fill(out, 0, 4 * rows * stride);
  for (let r = touchedRow0; r < touchedRow1; r++) {
    const end = load<i32>(touchedEnd + 4 * r);
    for (let c = load<i32>(touchedFirst + 4 * r) & ~3; c < end; c += 4) {
      const i = 4 * (r * stride + c);
      v128.store(out + i, lossOf(v128.load(layerA + state * PLANE_BYTES + i)));
    }
  }
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

/**
 * Sum over the counted cells, by leaf state, of the light that would come back if what lies on layer B were taken out
 * of layer A, where it lies too. Empties layer B.
 * @param counted a float a cell, 1 or 0; @param out a double a state, added to
 */
export function sumGains(tile: usize, ray: usize, counted: usize, out: usize): void {
  const stride = <i32>word(tile, TILE_STRIDE);
  const states = <i32>word(ray, RAY_STATES);
  for (let s = 0; s < states; s++) {
    let total: f64 = 0;
    for (let r = touchedRow0; r < touchedRow1; r++) {
      const end = load<i32>(touchedEnd + 4 * r);
      let sum = zero;
      for (let c = load<i32>(touchedFirst + 4 * r) & ~3; c < end; c += 4) {
        const i = 4 * (r * stride + c);
        const own = v128.load(layerB + s * PLANE_BYTES + i);
        v128.store(layerB + s * PLANE_BYTES + i, zero);
        const rest = f32x4.pmax(zero, f32x4.sub(v128.load(layerA + s * PLANE_BYTES + i), own));
        const taken = f32x4.mul(f32x4.sub(one, lossOf(rest)), lossOf(own));
        sum = f32x4.add(sum, f32x4.mul(taken, v128.load(counted + i)));
      }
      total +=
        <f64>f32x4.extract_lane(sum, 0) +
        <f64>f32x4.extract_lane(sum, 1) +
        <f64>f32x4.extract_lane(sum, 2) +
        <f64>f32x4.extract_lane(sum, 3);
    }
    store<f64>(out + 8 * s, load<f64>(out + 8 * s) + total);
  }
  forget();
}

/**
 * clamp(bias - sum of coefficient * slot, 0, most), a float a cell of the tile.
 * @param terms `count` pairs of floats, slot and coefficient
 */
export function combine(
  tile: usize,
  terms: usize,
  count: i32,
  bias: f32,
  most: f32,
  out: usize,
): void {
  const cells = (<i32>word(tile, TILE_ROWS)) * (<i32>word(tile, TILE_STRIDE));
  const sums = address(tile, TILE_SUMS);
  const biases = f32x4.splat(bias);
  const mosts = f32x4.splat(most);
  for (let i = 0; i < 4 * cells; i += 16) {
    let value = biases;
    for (let k = 0; k < count; k++) {
      const sum = sums + (<i32>load<f32>(terms + 8 * k)) * PLANE_BYTES + i;
      value = f32x4.sub(value, f32x4.mul(v128.load32_splat(terms + 8 * k + 4), v128.load(sum)));
    }
    v128.store(out + i, f32x4.pmin(mosts, f32x4.pmax(zero, value)));
  }
}
