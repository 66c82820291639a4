/**
 * The wind among scattered trees, over the ground: their roughness density, averaged over the ground upwind, on a coarse
 * grid that lies along the wind, and what it takes off. The grid is made from the trees alone, so that a part of a map
 * comes out as in the whole, and turns, mirrors and grows with the scene.
 */
import { LANES, TREE_BYTES } from './kernel/assembly/layout.ts';
import type { ShelterKernel } from './kernel/kernel.ts';
import type { LooseTree } from './loose-trees.ts';
import { porosityAtLeafShare, type ShelterPhase } from './shelter-phases.ts';
import { acrossWind, alongWind, type WindRay } from './shelter-tile.ts';
import { DRAG_NODES, dragTable, MOST_ROUGHNESS_DENSITY } from './tree-drag.ts';

/** Our guess: a tree's drag is felt over so many tree heights downwind, falling linearly to nothing. */
const FELT_H = 20;
/** Side of a cell of the grid in tree heights: trees nearer than this act as one rough patch (our guess). */
const CELL_H = 2;
/** Cells from a tree to where it is no longer felt. */
const FELT_CELLS = FELT_H / CELL_H;
/** A grid is made coarser rather than longer than this many cells from the first tree to the last. */
const MOST_CELLS = 96;
/** Nodes beyond the trees on both sides together, with those of the cells that the outermost trees lie in. */
const MARGIN = 8;

/** Most floats that the deficits of a field take. */
const MOST_FIELD_FLOATS = (MOST_CELLS + MARGIN) * (MOST_CELLS + FELT_CELLS + MARGIN) * LANES;

/** Trees, and what each shows to the wind in each leaf state. */
export interface Grove {
  readonly trees: readonly LooseTree[];
  /** Closed silhouette of each tree by leaf state, m2. */
  readonly areas: ReadonlyMap<ShelterPhase, Float64Array>;
}

export function grove(trees: readonly LooseTree[], phases: readonly ShelterPhase[]): Grove {
  const open = (areaM2: number, { outlineM2 }: LooseTree) => Math.max(0, 1 - areaM2 / outlineM2);
  const areaOf = (tree: LooseTree, leafShare: number) =>
    tree.outlineM2 *
    (1 - porosityAtLeafShare(open(tree.areaOnM2, tree), open(tree.areaOffM2, tree), leafShare));
  return {
    trees,
    areas: new Map(
      phases.map((phase) => [
        phase,
        Float64Array.from(trees, (tree) => areaOf(tree, phase.leafShare[tree.leafClass])),
      ]),
    ),
  };
}

/** A grid along the wind. */
export interface FieldSpec {
  readonly cellM: number;
  /** Across-wind and along-wind position of the first node. */
  readonly firstAcrossM: number;
  readonly firstAlongM: number;
  /** Nodes across and along the wind. */
  readonly across: number;
  readonly along: number;
}

/** The grid of some trees for one wind, and where in it each stands: column, row. */
function layOut(trees: readonly LooseTree[], ray: WindRay): { spec: FieldSpec; places: Float64Array } {
  let [weights, heights, sumS, sumT] = [0, 0, 0, 0];
  const places = new Float64Array(2 * trees.length);
  trees.forEach(({ xM, yM, topM, outlineM2 }, i) => {
    places[2 * i] = acrossWind(ray, xM, yM);
    places[2 * i + 1] = alongWind(ray, xM, yM);
    weights += outlineM2;
    heights += outlineM2 * topM;
    sumS += outlineM2 * places[2 * i];
    sumT += outlineM2 * places[2 * i + 1];
  });
  // Nodes lie about the trees' middle, so that one more column does not shift the others.
  const [middleS, middleT] = [sumS / weights, sumT / weights];
  let [left, right, up, down] = [0, 0, 0, 0];
  for (let i = 0; i < places.length; i += 2) {
    const [s, t] = [places[i] - middleS, places[i + 1] - middleT];
    left = Math.min(left, s);
    right = Math.max(right, s);
    up = Math.min(up, t);
    down = Math.max(down, t);
  }
  const cellM = Math.max((CELL_H * heights) / weights, Math.max(right - left, down - up) / MOST_CELLS);
  const firstColumn = Math.floor(left / cellM) - 2;
  const firstRow = Math.floor(up / cellM) - 2;
  const firstAcrossM = middleS + firstColumn * cellM;
  const firstAlongM = middleT + firstRow * cellM;
  for (let i = 0; i < places.length; i += 2) {
    places[i] = (places[i] - firstAcrossM) / cellM;
    places[i + 1] = (places[i + 1] - firstAlongM) / cellM;
  }
  const across = Math.floor(right / cellM) + 4 - firstColumn;
  const along = Math.floor(down / cellM) + FELT_CELLS + 4 - firstRow;
  return { spec: { cellM, firstAcrossM, firstAlongM, across, along }, places };
}

/** Where in a kernel a field of trees is worked out: addresses. */
export interface TreeRoom {
  /** The deficits at the nodes: LANES floats a node, row along * across + column across. */
  readonly field: number;
  readonly trees: number;
  readonly table: number;
}

export function takeTreeRoom(kernel: ShelterKernel, { trees }: Grove): TreeRoom {
  if (trees.length === 0) return { field: 0, trees: 0, table: 0 };
  const room = {
    field: kernel.take(4 * MOST_FIELD_FLOATS),
    trees: kernel.take(TREE_BYTES * trees.length),
    table: kernel.take(4 * dragTable().length),
  };
  kernel.floats.set(dragTable(), room.table / 4);
  return room;
}

/**
 * The deficits 1 - f of the trees at the nodes of a grid along one wind, one lane for each of up to LANES leaf states;
 * nothing at the outermost nodes. Null where there are no trees. Writes `room.field`.
 */
export function treeField(
  kernel: ShelterKernel,
  room: TreeRoom,
  { trees, areas: areasOf }: Grove,
  ray: WindRay,
  phases: readonly ShelterPhase[],
): FieldSpec | null {
  if (trees.length === 0) return null;
  const { spec, places } = layOut(trees, ray);
  const { across, along, cellM } = spec;
  const areas = phases.map((phase) => areasOf.get(phase) as Float64Array);
  const { doubles, floats } = kernel;
  for (let i = 0; i < trees.length; i++) {
    const at = room.trees + i * TREE_BYTES;
    doubles[at / 8] = places[2 * i];
    doubles[at / 8 + 1] = places[2 * i + 1];
    for (let lane = 0; lane < LANES; lane++)
      floats[at / 4 + 4 + lane] = lane < areas.length ? areas[lane][i] / (cellM * cellM) : 0;
  }
  kernel.fillField(
    room.field,
    across,
    along,
    room.trees,
    trees.length,
    FELT_CELLS,
    MOST_ROUGHNESS_DENSITY,
    room.table,
    DRAG_NODES,
  );
  return spec;
}
