/**
 * The hot code of the shelter engine, compiled to WebAssembly by `npm run kernel`. A tile's cells hold the deficit
 * 1 - f of the wind from one direction in four leaf states side by side; barriers raise it where theirs is larger.
 * Along-wind distance t = -(x upX + y upY) grows downwind, across-wind distance s = x upY - y upX to the right of
 * someone who faces the wind.
 */
import { GALE_NODES, LANE_BYTES, NODES_PER_HEIGHT, ROW_BYTES, SEASON_BYTES, TREE_BYTES } from './layout';

/** The barrier function is used from so many heights upwind to so many downwind (weps.ts). */
const UPWIND_REACH_H: f64 = 5;
const DOWNWIND_REACH_H: f64 = 35;
/** Half a micrometre, so that cells exactly on a boundary fall the same way after a rotation. */
const EDGE_M: f64 = 5e-7;

/** Our guess: how far the faster wind beside an end reaches, in heights. */
const ASIDE_H: f64 = 2;
const END_UPWIND_H: f64 = 2;
const END_DOWNWIND_H: f64 = 5;
/** A deficit this small is open wind: the barrier function runs out towards 1 without quite reaching it. */
const OPEN_DEFICIT: f32 = 0.002;

let columns: i32 = 0;
let rows: i32 = 0;
let cellM: f64 = 1;
let firstXM: f64 = 0;
/** Address of the rows' y, falling, in doubles. */
let rowY: usize = 0;
/** Address of the deficits, four floats a cell. */
let deficits: usize = 0;
let upX: f64 = 0;
let upY: f64 = 1;

let spanFrom: i32 = 0;
let spanTo: i32 = 0;

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
function alongWind(x: f64, y: f64): f64 {
  return -(x * upX + y * upY);
}

@inline
function acrossWind(x: f64, y: f64): f64 {
  return x * upY - y * upX;
}

/** Narrows the span to the columns where least <= g0 + column * slope <= greatest. */
function clipColumns(g0: f64, slope: f64, least: f64, greatest: f64): void {
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
function rowFrom(northM: f64): i32 {
  return <i32>Math.max(0, Math.min(<f64>rows, Math.floor((load<f64>(rowY) - northM) / cellM)));
}

/** Last row whose y can lie north of `southM`, with one to spare. */
function rowTo(southM: f64): i32 {
  return <i32>Math.min(<f64>(rows - 1), Math.max(-1, Math.ceil((load<f64>(rowY) - southM) / cellM)));
}

/**
 * Raises the deficits in the swath of one straight piece of even height to those of its distance from the centreline
 * along the wind.
 * @param table address of its deficits by distance node from 5 heights upwind on, four floats a node.
 */
export function layLine(x1: f64, y1: f64, x2: f64, y2: f64, heightM: f64, table: usize): void {
  const s1 = acrossWind(x1, y1);
  const s2 = acrossWind(x2, y2);
  if (Math.abs(s2 - s1) < EDGE_M) return;
  const t1 = alongWind(x1, y1);
  const slant = (alongWind(x2, y2) - t1) / (s2 - s1);
  const leastS = Math.min(s1, s2) - EDGE_M;
  const greatestS = Math.max(s1, s2) + EDGE_M;
  const leastD = -UPWIND_REACH_H * heightM + EDGE_M;
  const greatestD = DOWNWIND_REACH_H * heightM;
  const reachUp = UPWIND_REACH_H * heightM * upY;
  const reachDown = -DOWNWIND_REACH_H * heightM * upY;
  const firstRow = rowFrom(Math.max(y1, y2) + Math.max(reachUp, reachDown));
  const lastRow = rowTo(Math.min(y1, y2) + Math.min(reachUp, reachDown));
  const ds = cellM * upY;
  const dd = -cellM * upX - slant * ds;
  const perMetre = <f64>NODES_PER_HEIGHT / heightM;
  const nodeZero = UPWIND_REACH_H * <f64>NODES_PER_HEIGHT;
  const dv = dd * perMetre;
  for (let row = firstRow; row <= lastRow; row++) {
    const y = load<f64>(rowY + (<usize>row << 3));
    const s0 = acrossWind(firstXM, y);
    const d0 = alongWind(firstXM, y) - t1 - slant * (s0 - s1);
    spanFrom = 0;
    spanTo = columns - 1;
    clipColumns(s0, ds, leastS, greatestS);
    clipColumns(d0, dd, leastD, greatestD);
    const v0 = nodeZero + d0 * perMetre;
    const end = spanTo;
    let out = deficits + <usize>(row * columns + spanFrom) * LANE_BYTES;
    for (let c = spanFrom; c <= end; c++, out += LANE_BYTES) {
      const v = v0 + <f64>c * dv;
      const node = <i32>v;
      const at = table + <usize>node * LANE_BYTES;
      const near = v128.load(at);
      const next = v128.load(at, LANE_BYTES);
      const value = f32x4.add(near, f32x4.mul(f32x4.splat(<f32>(v - <f64>node)), f32x4.sub(next, near)));
      v128.store(out, f32x4.pmax(value, v128.load(out)));
    }
  }
}

/**
 * Speeds the wind up beside one end, from the gain of each leaf state at the end to nothing 2 heights sideways, 2
 * upwind and 5 downwind, only where every barrier leaves the wind open.
 * @param side 1: the thing ends to the right of someone who faces the wind; -1: to the left.
 * @param gains address of the gains, four floats.
 */
export function layEnd(x: f64, y: f64, heightM: f64, side: f64, gains: usize): void {
  const gain = f32x4.neg(v128.load(gains));
  const s1 = acrossWind(x, y);
  const t1 = alongWind(x, y);
  const reach = (ASIDE_H + END_DOWNWIND_H) * heightM;
  const firstRow = rowFrom(y + reach);
  const lastRow = rowTo(y - reach);
  const ds = cellM * upY * side;
  const dt = -cellM * upX;
  const open = f32x4.splat(OPEN_DEFICIT);
  for (let row = firstRow; row <= lastRow; row++) {
    const rowsY = load<f64>(rowY + (<usize>row << 3));
    const aside0 = (acrossWind(firstXM, rowsY) - s1) * side;
    const d0 = alongWind(firstXM, rowsY) - t1;
    spanFrom = 0;
    spanTo = columns - 1;
    clipColumns(aside0, ds, EDGE_M, ASIDE_H * heightM);
    clipColumns(d0, dt, -END_UPWIND_H * heightM, END_DOWNWIND_H * heightM);
    const end = spanTo;
    let out = deficits + <usize>(row * columns + spanFrom) * LANE_BYTES;
    for (let c = spanFrom; c <= end; c++, out += LANE_BYTES) {
      const aside = 1 - (aside0 + <f64>c * ds) / (ASIDE_H * heightM);
      const d = (d0 + <f64>c * dt) / heightM;
      const along = d < 0 ? 1 + d / END_UPWIND_H : 1 - d / END_DOWNWIND_H;
      const there = v128.load(out);
      const faster = f32x4.pmin(f32x4.mul(gain, f32x4.splat(<f32>(aside * along))), there);
      v128.store(out, v128.bitselect(faster, there, f32x4.le(there, open)));
    }
  }
}

/**
 * Raises the deficits beside one straight piece that the wind blows along: from those at its line, falling linearly to
 * nothing `besideH` heights to either side, between its two ends.
 * @param deficitsAtLine address of the deficits at the line, four floats.
 */
export function layBeside(
  x1: f64,
  y1: f64,
  x2: f64,
  y2: f64,
  height1M: f64,
  height2M: f64,
  besideH: f64,
  deficitsAtLine: usize,
): void {
  const atLine = v128.load(deficitsAtLine);
  const lengthM = Math.sqrt((x2 - x1) * (x2 - x1) + (y2 - y1) * (y2 - y1));
  const ux = (x2 - x1) / lengthM;
  const uy = (y2 - y1) / lengthM;
  const t1 = alongWind(x1, y1);
  const t2 = alongWind(x2, y2);
  const mostM = besideH * Math.max(height1M, height2M);
  const firstRow = rowFrom(Math.max(y1, y2) + mostM);
  const lastRow = rowTo(Math.min(y1, y2) - mostM);
  const dq = (cellM * ux) / lengthM;
  const da = cellM * uy;
  for (let row = firstRow; row <= lastRow; row++) {
    const y = load<f64>(rowY + (<usize>row << 3));
    const q0 = ((firstXM - x1) * ux + (y - y1) * uy) / lengthM;
    const a0 = (firstXM - x1) * uy - (y - y1) * ux;
    spanFrom = 0;
    spanTo = columns - 1;
    clipColumns(q0, dq, 0, 1);
    clipColumns(a0, da, -mostM, mostM);
    clipColumns(alongWind(firstXM, y), -cellM * upX, Math.min(t1, t2), Math.max(t1, t2));
    const end = spanTo;
    let out = deficits + <usize>(row * columns + spanFrom) * LANE_BYTES;
    for (let c = spanFrom; c <= end; c++, out += LANE_BYTES) {
      const q = q0 + <f64>c * dq;
      const share = 1 - Math.abs(a0 + <f64>c * da) / (besideH * (height1M + q * (height2M - height1M)));
      // Below 0, outside, it is never the larger one.
      const value = f32x4.mul(atLine, f32x4.splat(<f32>share));
      v128.store(out, f32x4.pmax(v128.load(out), value));
    }
  }
}

/**
 * Raises the deficits to those of a field that lies along the wind, read between its nodes.
 * @param field address of the deficits at its nodes, four floats a node, along the wind row by row.
 */
export function layField(
  field: usize,
  across: i32,
  along: i32,
  nodeM: f64,
  firstAcrossM: f64,
  firstAlongM: f64,
): void {
  const ds = (cellM * upY) / nodeM;
  const dt = (-cellM * upX) / nodeM;
  const rowBytes = <usize>across * LANE_BYTES;
  for (let row = 0; row < rows; row++) {
    const y = load<f64>(rowY + (<usize>row << 3));
    const s0 = (acrossWind(firstXM, y) - firstAcrossM) / nodeM;
    const t0 = (alongWind(firstXM, y) - firstAlongM) / nodeM;
    spanFrom = 0;
    spanTo = columns - 1;
    clipColumns(s0, ds, 0, <f64>across - 1.000001);
    clipColumns(t0, dt, 0, <f64>along - 1.000001);
    const end = spanTo;
    let out = deficits + <usize>(row * columns + spanFrom) * LANE_BYTES;
    for (let c = spanFrom; c <= end; c++, out += LANE_BYTES) {
      const s = s0 + <f64>c * ds;
      const t = t0 + <f64>c * dt;
      const si = <i32>s;
      const ti = <i32>t;
      const u = f32x4.splat(<f32>(s - <f64>si));
      const near = field + <usize>ti * rowBytes + <usize>si * LANE_BYTES;
      const next = near + rowBytes;
      const a = v128.load(near);
      const b = v128.load(next);
      const first = f32x4.add(a, f32x4.mul(u, f32x4.sub(v128.load(near, LANE_BYTES), a)));
      const second = f32x4.add(b, f32x4.mul(u, f32x4.sub(v128.load(next, LANE_BYTES), b)));
      const value = f32x4.add(
        first,
        f32x4.mul(f32x4.splat(<f32>(t - <f64>ti)), f32x4.sub(second, first)),
      );
      v128.store(out, f32x4.pmax(value, v128.load(out)));
    }
  }
}

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
 * Writes the deficits of one straight piece at the distance nodes `from` to `to`, and at up to three more.
 * @param rows one place in the table of the barrier function for each leaf state: address of the deficits by node of
 * the row before it and of the row after it, i32; how far between, f32; what the deficit is multiplied by, f32.
 * @param reachNodes distance from the piece beyond which they fall in inverse proportion.
 * @param out address of four floats a node.
 */
export function fillLine(rows: usize, reachNodes: f32, from: i32, to: i32, out: usize): void {
  const reach = f32x4.splat(reachNodes);
  const nodeZero = f32x4.splat(<f32>UPWIND_REACH_H * <f32>NODES_PER_HEIGHT);
  const one = f32x4.splat(1);
  for (let node = from; node <= to; node += 4) {
    const nodes = f32x4.add(f32x4.splat(<f32>node), f32x4(0, 1, 2, 3));
    const away = f32x4.abs(f32x4.sub(nodes, nodeZero));
    const short = v128.bitselect(f32x4.div(reach, away), one, f32x4.gt(away, reach));
    const a = f32x4.mul(short, rowAt(rows, node));
    const b = f32x4.mul(short, rowAt(rows + ROW_BYTES, node));
    const c = f32x4.mul(short, rowAt(rows + 2 * ROW_BYTES, node));
    const d = f32x4.mul(short, rowAt(rows + 3 * ROW_BYTES, node));
    // From four nodes of each leaf state to four leaf states of each node.
    const ab = v128.shuffle<f32>(a, b, 0, 4, 1, 5);
    const cd = v128.shuffle<f32>(c, d, 0, 4, 1, 5);
    const abAfter = v128.shuffle<f32>(a, b, 2, 6, 3, 7);
    const cdAfter = v128.shuffle<f32>(c, d, 2, 6, 3, 7);
    const at = out + <usize>node * LANE_BYTES;
    v128.store(at, v128.shuffle<f64>(ab, cd, 0, 2));
    v128.store(at, v128.shuffle<f64>(ab, cd, 1, 3), LANE_BYTES);
    v128.store(at, v128.shuffle<f64>(abAfter, cdAfter, 0, 2), 2 * LANE_BYTES);
    v128.store(at, v128.shuffle<f64>(abAfter, cdAfter, 1, 3), 3 * LANE_BYTES);
  }
}

/** Deficits of one leaf state at four nodes. */
@inline
function rowAt(row: usize, node: i32): v128 {
  const less = v128.load(<usize>load<i32>(row) + (<usize>node << 2));
  const more = v128.load(<usize>load<i32>(row, 4) + (<usize>node << 2));
  const between = v128.load32_splat(row, 8);
  return f32x4.mul(v128.load32_splat(row, 12), f32x4.add(less, f32x4.mul(between, f32x4.sub(more, less))));
}

/**
 * The deficits of scattered trees at the nodes of a grid along the wind: each tree's roughness density is laid on the
 * nodes about it, averaged over the ground upwind of each node, nearer ground for more, and turned into a deficit.
 * @param field address of the deficits, four floats a node.
 * @param trees address of each tree's column and row in the grid, f64, and its density in each leaf state, four f32.
 * @param feltRows rows downwind over which a tree's drag falls to nothing.
 * @param table address of the deficits by the square root of the share of the greatest density, `tableNodes` nodes and
 * one to spare, f32.
 */
export function fillField(
  field: usize,
  across: i32,
  along: i32,
  trees: usize,
  count: i32,
  feltRows: i32,
  mostDensity: f32,
  table: usize,
  tableNodes: i32,
): void {
  const nodes = across * along;
  const rowBytes = <usize>across * LANE_BYTES;
  memory.fill(field, 0, <usize>nodes * LANE_BYTES);
  const whole = <f64>(feltRows + 1) / 2;
  for (let tree = 0; tree < count; tree++, trees += TREE_BYTES) {
    const column = load<f64>(trees);
    const row = load<f64>(trees, 8);
    const density = v128.load(trees, 16);
    const c = <i32>Math.floor(column + 0.5);
    const r = <i32>Math.floor(row + 0.5);
    // Quadratic B-splines over the three nodes around, so that the rows of an orchard do not beat with the nodes.
    const u = column - <f64>c;
    const v = row - <f64>r;
    const left = f32x4.mul(density, f32x4.splat(<f32>(0.5 * (0.5 - u) * (0.5 - u))));
    const middle = f32x4.mul(density, f32x4.splat(<f32>(0.75 - u * u)));
    const right = f32x4.mul(density, f32x4.splat(<f32>(0.5 * (0.5 + u) * (0.5 + u))));
    const before = 0.5 * (0.5 - v) * (0.5 - v);
    const at = 0.75 - v * v;
    const after = 0.5 * (0.5 + v) * (0.5 + v);
    let out = field + <usize>(r - 1) * rowBytes + <usize>(c - 1) * LANE_BYTES;
    for (let m = 0; m < feltRows + 2; m++, out += rowBytes) {
      const upwind =
        before * nearness(m, feltRows) + at * nearness(m - 1, feltRows) + after * nearness(m - 2, feltRows);
      const share = f32x4.splat(<f32>(upwind / whole));
      v128.store(out, f32x4.add(v128.load(out), f32x4.mul(share, left)));
      v128.store(out, f32x4.add(v128.load(out, LANE_BYTES), f32x4.mul(share, middle)), LANE_BYTES);
      v128.store(out, f32x4.add(v128.load(out, 2 * LANE_BYTES), f32x4.mul(share, right)), 2 * LANE_BYTES);
    }
  }
  const perDensity = f32x4.splat(<f32>1 / mostDensity);
  const one = f32x4.splat(1);
  const perRoot = f32x4.splat(<f32>tableNodes);
  for (let node = 0, out = field; node < nodes; node++, out += LANE_BYTES) {
    const density = v128.load(out);
    if (!v128.any_true(density)) continue;
    const root = f32x4.mul(f32x4.sqrt(f32x4.min(one, f32x4.mul(density, perDensity))), perRoot);
    v128.store(out, readBetween(table, root));
  }
}

/** How much ground so many rows upwind counts. */
@inline
function nearness(rowsUpwind: i32, feltRows: i32): f64 {
  return rowsUpwind >= 0 && rowsUpwind < feltRows ? 1 - <f64>rowsUpwind / <f64>feltRows : 0;
}

/** Four places of a table, each read between its nodes. */
@inline
function readBetween(table: usize, at: v128): v128 {
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
