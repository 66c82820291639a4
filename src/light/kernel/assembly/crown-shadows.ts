/** Shadows of crowns: the outline swept away from the sun, and in it each cell's exact path through the crown. */
import {
  FAR,
  LEVEL,
  address,
  clipEnd,
  clipFirst,
  four,
  lanes,
  lay,
  one,
  perMetre,
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
  CROWN_BASE_Z,
  CROWN_CLASS,
  CROWN_FOOT_Z,
  CROWN_FORM,
  CROWN_OFF,
  CROWN_ON,
  CROWN_RADIUS,
  CROWN_TOP_Z,
  CROWN_X,
  CROWN_Y,
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

export function castCrown(tile: usize, ray: usize, crown: usize, classCount: i32, into: usize, clip: i32): void {
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
