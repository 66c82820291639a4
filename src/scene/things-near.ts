import type { Barrier } from '../crowns/barrier.ts';
import { CROWN_STRIDE, CROWN_TOP, CROWN_X, CROWN_Y, type CrownSet } from '../crowns/crown-set.ts';
import { boxOfGrid, type GridSpec } from '../numeric/grid.ts';
import type { ShelterScene } from '../wind/shelter-types.ts';
import { DOWNWIND_REACH_H } from '../wind/weps.ts';

type Box = ReturnType<typeof boxOfGrid>;

/** Heights beyond which the shelter engine lets a thing act on nothing, with some to spare: behind a belt, */
const BELT_REACH_H = DOWNWIND_REACH_H + 5;
/** and 20 of the trees' mean behind a tree (wind/tree-field.ts), with the cells they are laid on. */
const TREE_REACH_H = 24;

/**
 * A scene of the shelter engine with what can act on one grid alone. What belts leave there stays as it is to the last
 * bit; the grid that scattered trees are laid on lies about those that are left.
 */
export function withThingsNear(scene: ShelterScene, grid: GridSpec): ShelterScene {
  const box = boxOfGrid(grid);
  return {
    ...scene,
    barriers: scene.barriers.filter((barrier) => mayReach(barrier, box)),
    crowns: crownsNear(scene.crowns, box),
  };
}

function mayReach({ xyM, heightM, widthM }: Barrier, box: Box): boolean {
  const reachM = BELT_REACH_H * heightM.reduce((most, each) => Math.max(most, each), 0) + widthM;
  let [west, east, south, north] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let i = 0; i < xyM.length; i += 2) {
    west = Math.min(west, xyM[i]);
    east = Math.max(east, xyM[i]);
    south = Math.min(south, xyM[i + 1]);
    north = Math.max(north, xyM[i + 1]);
  }
  return (
    west - reachM <= box.east &&
    east + reachM >= box.west &&
    south - reachM <= box.north &&
    north + reachM >= box.south
  );
}

function crownsNear(crowns: CrownSet, box: Box): CrownSet {
  const { values } = crowns;
  const reachM =
    TREE_REACH_H *
    Array.from({ length: crowns.count }, (_, k) => values[k * CROWN_STRIDE + CROWN_TOP]).reduce(
      (most, each) => Math.max(most, each),
      0,
    );
  const near = Array.from({ length: crowns.count }, (_, k) => k).filter((k) => {
    const [x, y] = [values[k * CROWN_STRIDE + CROWN_X], values[k * CROWN_STRIDE + CROWN_Y]];
    return (
      x - reachM <= box.east && x + reachM >= box.west && y - reachM <= box.north && y + reachM >= box.south
    );
  });
  if (near.length === crowns.count) return crowns;
  const kept = new Float64Array(near.length * CROWN_STRIDE);
  for (const [i, k] of near.entries())
    kept.set(values.subarray(k * CROWN_STRIDE, (k + 1) * CROWN_STRIDE), i * CROWN_STRIDE);
  return {
    count: near.length,
    values: kept,
    form: Uint8Array.from(near, (k) => crowns.form[k]),
    leafClass: Uint8Array.from(near, (k) => crowns.leafClass[k]),
    thing: Uint16Array.from(near, (k) => crowns.thing[k]),
  };
}
