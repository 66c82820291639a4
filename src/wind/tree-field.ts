/**
 * The wind among scattered trees, over the ground: their roughness density, averaged over the ground upwind, on a coarse
 * grid that lies along the wind, and what it takes off. The grid is made from the trees alone, so that a part of a map
 * comes out as in the whole, and turns, mirrors and grows with the scene.
 */
import { LANES } from './kernel/assembly/layout.ts';
import type { LooseTree } from './loose-trees.ts';
import { porosityAtLeafShare, type ShelterPhase } from './shelter-phases.ts';
import {
  acrossWind,
  alongWind,
  clipColumns,
  clipRows,
  type ShelterTile,
  type WindRay,
} from './shelter-tile.ts';
import { frictionShareAmongTrees } from './tree-drag.ts';

/** Our guess: a tree's drag is felt over so many tree heights downwind, falling linearly to nothing. */
const FELT_H = 20;
/** Side of a cell of the grid in tree heights: trees nearer than this act as one rough patch (our guess). */
const CELL_H = 2;
/** Cells from a tree to where it is no longer felt. */
const FELT_CELLS = FELT_H / CELL_H;
/** A grid is made coarser rather than longer than this many cells to a side. */
const MOST_CELLS = 96;

/** Deficits 1 - f at the nodes of a grid along the wind; leaf states side by side. */
export interface TreeField {
  readonly cellM: number;
  /** Across-wind and along-wind position of the first node. */
  readonly firstAcrossM: number;
  readonly firstAlongM: number;
  /** Nodes across and along the wind. */
  readonly across: number;
  readonly along: number;
  /** (row along * across + column across) * LANES + lane; nothing at the outermost nodes. */
  readonly deficit: Float32Array;
}

const areaOf = (tree: LooseTree, leafShare: number): number => {
  const open = (areaM2: number) => Math.max(0, 1 - areaM2 / tree.outlineM2);
  return tree.outlineM2 * (1 - porosityAtLeafShare(open(tree.areaOnM2), open(tree.areaOffM2), leafShare));
};

/** Adds each tree's area to the four nodes around it. */
function layTrees(
  trees: readonly LooseTree[],
  places: readonly { readonly s: number; readonly t: number }[],
  phases: readonly ShelterPhase[],
  spec: Omit<TreeField, 'deficit'>,
  density: Float64Array,
): void {
  const { cellM, across } = spec;
  trees.forEach((tree, i) => {
    const column = (places[i].s - spec.firstAcrossM) / cellM;
    const row = (places[i].t - spec.firstAlongM) / cellM;
    const [c, r] = [Math.floor(column), Math.floor(row)];
    const [u, v] = [column - c, row - r];
    phases.forEach(({ leafShare }, lane) => {
      const density0 = areaOf(tree, leafShare[tree.leafClass]) / (cellM * cellM);
      const at = (r * across + c) * LANES + lane;
      density[at] += (1 - u) * (1 - v) * density0;
      density[at + LANES] += u * (1 - v) * density0;
      density[at + across * LANES] += (1 - u) * v * density0;
      density[at + (across + 1) * LANES] += u * v * density0;
    });
  });
}

/** The field of the trees for one wind, one lane for each of up to LANES leaf states; null where there are no trees. */
export function treeField(
  trees: readonly LooseTree[],
  ray: WindRay,
  phases: readonly ShelterPhase[],
): TreeField | null {
  if (trees.length === 0) return null;
  let [weights, heights, sumS, sumT] = [0, 0, 0, 0];
  const places = trees.map(({ xM, yM, topM, outlineM2 }) => {
    const place = { s: acrossWind(ray, xM, yM), t: alongWind(ray, xM, yM) };
    weights += outlineM2;
    heights += outlineM2 * topM;
    sumS += outlineM2 * place.s;
    sumT += outlineM2 * place.t;
    return place;
  });
  // Nodes lie about the trees' middle, so that one more column does not shift the others.
  const [middleS, middleT] = [sumS / weights, sumT / weights];
  let [west, east, up, down] = [0, 0, 0, 0];
  for (const { s, t } of places) {
    west = Math.min(west, s - middleS);
    east = Math.max(east, s - middleS);
    up = Math.min(up, t - middleT);
    down = Math.max(down, t - middleT);
  }
  const cellM = Math.max((CELL_H * heights) / weights, Math.max(east - west, down - up) / MOST_CELLS);
  const firstColumn = Math.floor(west / cellM) - 1;
  const firstRow = Math.floor(up / cellM) - 1;
  const spec = {
    cellM,
    firstAcrossM: middleS + firstColumn * cellM,
    firstAlongM: middleT + firstRow * cellM,
    across: Math.floor(east / cellM) + 3 - firstColumn,
    along: Math.floor(down / cellM) + FELT_CELLS + 3 - firstRow,
  };
  const density = new Float64Array(spec.across * spec.along * LANES);
  layTrees(trees, places, phases, spec, density);
  return { ...spec, deficit: deficitsOf(density, spec) };
}

/** Averages the density over the ground upwind of each node, nearer ground for more, and works out what is left. */
function deficitsOf(density: Float64Array, { across, along }: Omit<TreeField, 'deficit'>): Float32Array {
  const row = across * LANES;
  const deficit = new Float32Array(density.length);
  const whole = (FELT_CELLS + 1) / 2;
  for (let r = 0, i = 0; r < along; r++)
    for (let c = 0; c < row; c++, i++) {
      let sum = 0;
      for (let m = 0; m < FELT_CELLS && m <= r; m++) sum += (1 - m / FELT_CELLS) * density[i - m * row];
      if (sum > 0) deficit[i] = 1 - frictionShareAmongTrees(sum / whole);
    }
  return deficit;
}

/**
 * Raises the deficits of a tile's cells to those of the trees' field, where these are larger: the smallest share wins.
 * @param out deficits of the tile from `at` on, one float for each lane of a cell. Mutates `out`. Hot.
 */
export function layTreeField(
  tile: ShelterTile,
  ray: WindRay,
  field: TreeField,
  out: Float32Array,
  at: number,
): void {
  const { cellM, firstAcrossM, firstAlongM, across, along, deficit } = field;
  const lastAcrossM = firstAcrossM + (across - 1) * cellM;
  const lastAlongM = firstAlongM + (along - 1) * cellM;
  // y = -s upX - t upY
  const ys = [firstAcrossM, lastAcrossM].flatMap((s) =>
    [firstAlongM, lastAlongM].map((t) => -s * ray.upX - t * ray.upY),
  );
  const [firstRow, lastRow] = clipRows(tile, Math.min(...ys), Math.max(...ys));
  const ds = (tile.cellM * ray.upY) / cellM;
  const dt = (-tile.cellM * ray.upX) / cellM;
  const span = new Int32Array(2);
  for (let row = firstRow; row <= lastRow; row++) {
    const y = tile.rowYM[row];
    const s0 = (acrossWind(ray, tile.firstXM, y) - firstAcrossM) / cellM;
    const t0 = (alongWind(ray, tile.firstXM, y) - firstAlongM) / cellM;
    span[0] = 0;
    span[1] = tile.columns - 1;
    clipColumns(span, s0, ds, 0, across - 1.000001);
    clipColumns(span, t0, dt, 0, along - 1.000001);
    for (let c = span[0]; c <= span[1]; c++) {
      const s = s0 + c * ds;
      const t = t0 + c * dt;
      const si = s | 0;
      const ti = t | 0;
      const u = s - si;
      const v = t - ti;
      const a = (ti * across + si) * LANES;
      const b = a + across * LANES;
      const cell = at + (row * tile.columns + c) * LANES;
      for (let lane = 0; lane < LANES; lane++) {
        const near = deficit[a + lane] + u * (deficit[a + LANES + lane] - deficit[a + lane]);
        const next = deficit[b + lane] + u * (deficit[b + LANES + lane] - deficit[b + lane]);
        const value = near + v * (next - near);
        if (value > out[cell + lane]) out[cell + lane] = value;
      }
    }
  }
}
