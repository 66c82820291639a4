import { cellsInside } from '../geo/rasterise.ts';
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
  const mask = cellsInside(grid, rings);
  let [count, depth, held, hollow, dammed, deepest] = [0, 0, 0, 0, 0, 0];
  let lowestM = Number.POSITIVE_INFINITY;
  for (let cell = 0; cell < mask.length; cell++) {
    if (!mask[cell] || Number.isNaN(depthM[cell])) continue;
    count++;
    depth += depthM[cell];
    held += dammedDepthM[cell];
    if (depthM[cell] > HOLLOW_M) hollow++;
    if (dammedDepthM[cell] > HOLLOW_M) dammed++;
    lowestM = Math.min(lowestM, elevationM[cell]);
    deepest = Math.max(deepest, dammedDepthM[cell]);
  }
  const share = (sum: number) => (count > 0 ? sum / count : Number.NaN);
  return {
    meanDepthM: share(depth),
    heldDepthM: share(held),
    deepestM: deepest,
    hollowShare: share(hollow),
    dammedShare: share(dammed),
    drainsThroughM2: comesIn(mask, elevationM, lowestM, air.runsTo) * grid.cellM ** 2,
  };
}

const UNKNOWN = 0;
const ENTERS = 1;
const PASSES_BY = 2;

/**
 * Cells outside of a mask and above its lowest ground from which air comes to it, each counted once however often its way
 * leaves and enters: over level ground nothing comes down.
 */
function comesIn(mask: Uint8Array, elevationM: Float32Array, lowestM: number, runsTo: Int32Array): number {
  const fate = new Uint8Array(mask.length);
  const way: number[] = [];
  let count = 0;
  for (let cell = 0; cell < mask.length; cell++) {
    if (mask[cell] || Number.isNaN(elevationM[cell])) continue;
    way.length = 0;
    let at = cell;
    while (at !== -1 && !mask[at] && fate[at] === UNKNOWN) {
      way.push(at);
      at = runsTo[at];
    }
    const end = at === -1 ? PASSES_BY : mask[at] ? ENTERS : fate[at];
    for (const each of way) fate[each] = end;
    if (end === ENTERS) for (const each of way) if (elevationM[each] > lowestM) count++;
  }
  return count;
}
