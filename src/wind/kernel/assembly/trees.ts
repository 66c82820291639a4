/** Scattered trees: their field along the wind, and laying it on the tile. */
import { LANE_BYTES, TREE_BYTES } from './layout';
import {
  acrossWind,
  alongWind,
  cellM,
  clipColumns,
  columns,
  deficits,
  firstXM,
  readBetween,
  rowY,
  rows,
  spanFrom,
  spanTo,
  upX,
  upY,
  wholeRow,
} from './tile';

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
    wholeRow();
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
