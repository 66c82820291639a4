/**
 * The hot code of the shelter engine, compiled to WebAssembly by `npm run kernel`. A tile's cells hold the deficit
 * 1 - f of the wind from one direction in four leaf states side by side; barriers raise it where theirs is larger.
 * Along-wind distance t = -(x upX + y upY) grows downwind, across-wind distance s = x upY - y upX to the right of
 * someone who faces the wind.
 */
import { LANE_BYTES, NODES_PER_HEIGHT, ROW_BYTES } from './layout';
import {
  EDGE_M,
  acrossWind,
  alongWind,
  cellM,
  clipColumns,
  columns,
  deficits,
  firstXM,
  rowFrom,
  rowTo,
  rowY,
  rows,
  spanFrom,
  spanTo,
  upX,
  upY,
  wholeRow,
} from './tile';

export { addDirection, applyRelief, chainDeficits } from './sums';
export { clearDeficits, firstFreeByte, setDeficits, setTile, setWind } from './tile';
export { fillField, layField } from './trees';

/** The barrier function is used from so many heights upwind to so many downwind (weps.ts). */
const UPWIND_REACH_H: f64 = 5;
const DOWNWIND_REACH_H: f64 = 35;
/** Our guess: how far the faster wind beside an end reaches, in heights. */
const ASIDE_H: f64 = 2;
const END_UPWIND_H: f64 = 2;
const END_DOWNWIND_H: f64 = 5;
/** A deficit this small is open wind: the barrier function runs out towards 1 without quite reaching it. */
const OPEN_DEFICIT: f32 = 0.002;

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
    wholeRow();
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
    wholeRow();
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
    wholeRow();
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
