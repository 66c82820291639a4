import { forEachInside } from '../geo/rasterise.ts';
import type { ColdFigures } from './choose-types.ts';
import type { ColdAir } from './cold-air.ts';

/** A hollow is deeper than this: what is shallower, the night's first breath empties. Our choice. */
export const HOLLOW_M = 0.3;

/** What cold air comes to on a field. @param rings of the field, local metres. */
export function coldFigures(
  {
    grid,
    elevationM,
    depthM,
    dammedDepthM,
    air,
  }: Pick<ColdAir, 'grid' | 'elevationM' | 'depthM' | 'dammedDepthM' | 'air'>,
  rings: readonly (readonly (readonly [number, number])[])[],
): ColdFigures {
  const inside = new Uint8Array(depthM.length);
  let [count, depth, held, hollow, dammed, deepest] = [0, 0, 0, 0, 0, 0];
  let lowestM = Number.POSITIVE_INFINITY;
  forEachInside(grid, rings, (cell) => {
    inside[cell] = 1;
    if (Number.isNaN(depthM[cell])) return;
    count++;
    depth += depthM[cell];
    held += dammedDepthM[cell];
    if (depthM[cell] > HOLLOW_M) hollow++;
    if (dammedDepthM[cell] > HOLLOW_M) dammed++;
    lowestM = Math.min(lowestM, elevationM[cell]);
    deepest = Math.max(deepest, dammedDepthM[cell]);
  });
  const share = (sum: number) => (count > 0 ? sum / count : Number.NaN);
  return {
    meanDepthM: share(depth),
    heldDepthM: share(held),
    deepestM: deepest,
    hollowShare: share(hollow),
    dammedShare: share(dammed),
    drainsThroughM2: comesIn(inside, elevationM, lowestM, feedersOf(air.runsTo)) * grid.cellM ** 2,
  };
}

/**
 * Cells outside of a mask and above its lowest ground from which air comes to it, each counted once however often its way
 * leaves and enters: over level ground nothing comes down.
 */
function comesIn(
  inside: Uint8Array,
  elevationM: Float32Array,
  lowestM: number,
  { start, from }: Feeders,
): number {
  const ahead: number[] = [];
  const enter = (cell: number) => {
    for (let k = start[cell]; k < start[cell + 1]; k++) if (!inside[from[k]]) ahead.push(from[k]);
  };
  for (let cell = 0; cell < inside.length; cell++) if (inside[cell]) enter(cell);
  let count = 0;
  for (let cell = ahead.pop(); cell !== undefined; cell = ahead.pop()) {
    if (elevationM[cell] > lowestM) count++;
    enter(cell);
  }
  return count;
}

/** Which cells run to each: those of cell k are from[start[k]] to from[start[k + 1] - 1]. */
interface Feeders {
  readonly start: Uint32Array;
  readonly from: Uint32Array;
}

/** Worked out once for all the fields of a site. */
const known = new WeakMap<Int32Array, Feeders>();

function feedersOf(runsTo: Int32Array): Feeders {
  const made = known.get(runsTo);
  if (made) return made;
  const start = new Uint32Array(runsTo.length + 1);
  for (const to of runsTo) if (to !== -1) start[to + 1]++;
  for (let cell = 0; cell < runsTo.length; cell++) start[cell + 1] += start[cell];
  const next = start.slice();
  const from = new Uint32Array(start[runsTo.length]);
  for (let cell = 0; cell < runsTo.length; cell++) if (runsTo[cell] !== -1) from[next[runsTo[cell]]++] = cell;
  const feeders = { start, from };
  known.set(runsTo, feeders);
  return feeders;
}
