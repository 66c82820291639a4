/**
 * The hot code of the shelter engine, compiled to WebAssembly by `npm run kernel`. A tile's cells hold the deficit
 * 1 - f of the wind from one direction in four leaf states side by side; barriers raise it where theirs is larger.
 * Along-wind distance t = -(x upX + y upY) grows downwind, across-wind distance s = x upY - y upX to the right of
 * someone who faces the wind.
 */
import { GALE_NODES, LANE_BYTES, NODES_PER_HEIGHT } from './layout';

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
 * Adds one direction over the cells of the tile to one season's sums.
 * @param speed address of the sums of speed deficit, four floats a cell; @param speedWeights four floats: what a whole
 * deficit in each leaf state counts, m/s
 * @param gale address of the sums of gale share less that of open ground, one float a cell; @param galeWeights four
 * floats; @param galeTable address of the share of hours with a gale by share of open wind, 0: there is never one
 */
export function addDirection(
  speed: usize,
  speedWeights: usize,
  gale: usize,
  galeWeights: usize,
  galeTable: usize,
): void {
  const weight = v128.load(speedWeights);
  const w0 = load<f32>(galeWeights);
  const w1 = load<f32>(galeWeights, 4);
  const w2 = load<f32>(galeWeights, 8);
  const w3 = load<f32>(galeWeights, 12);
  const open: f32 = galeTable ? load<f32>(galeTable, GALE_NODES * 4) : 0;
  const cells = columns * rows;
  let at = deficits;
  for (let cell = 0; cell < cells; cell++, at += LANE_BYTES, speed += LANE_BYTES, gale += 4) {
    const deficit = v128.load(at);
    if (!v128.any_true(f32x4.ne(deficit, f32x4.splat(0)))) continue;
    v128.store(speed, f32x4.add(v128.load(speed), f32x4.mul(weight, deficit)));
    if (!galeTable) continue;
    let change: f32 = 0;
    if (w0) change += w0 * (chanceAt(galeTable, f32x4.extract_lane(deficit, 0)) - open);
    if (w1) change += w1 * (chanceAt(galeTable, f32x4.extract_lane(deficit, 1)) - open);
    if (w2) change += w2 * (chanceAt(galeTable, f32x4.extract_lane(deficit, 2)) - open);
    if (w3) change += w3 * (chanceAt(galeTable, f32x4.extract_lane(deficit, 3)) - open);
    store<f32>(gale, load<f32>(gale) + change);
  }
}

@inline
function chanceAt(table: usize, deficit: f32): f32 {
  const v: f32 = (<f32>1 - deficit) * <f32>GALE_NODES;
  const node = <i32>v;
  const at = table + (<usize>node << 2);
  const near = load<f32>(at);
  return near + (v - <f32>node) * (load<f32>(at, 4) - near);
}
