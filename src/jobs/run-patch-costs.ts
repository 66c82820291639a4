import type { LightScene } from '../light/light-types.ts';
import type { PatchMask } from '../scene/patch-masks.ts';
import type { JobRunner, RunOptions } from './messages.ts';

/** What each thing of a scene costs one patch: the mean over its cells, indexed by thing. */
export interface PatchCost {
  readonly patch: PatchMask;
  /** Ground of the counted cells. */
  readonly areaM2: number;
  /** Hours of direct sun a day that would come back without the thing, growing season. */
  readonly sunHoursADay: Float64Array;
  readonly lightShare: Float64Array;
}

/** The light that each thing takes from each patch, one job a patch. */
export async function runPatchCosts(
  runner: JobRunner,
  scene: LightScene,
  thingCount: number,
  patches: readonly PatchMask[],
  options: RunOptions = {},
): Promise<PatchCost[]> {
  let done = 0;
  const costs = await Promise.all(
    patches.map(async (patch): Promise<PatchCost | null> => {
      const { grid, mask, readingHeightM } = patch;
      const cells = mask.reduce((sum, one) => sum + one, 0);
      if (cells === 0) return null;
      const cost = await runner.run(
        'light-cost',
        { scene, grid, readingHeightM, mask, thingCount },
        { signal: options.signal },
      );
      done++;
      options.onProgress?.(done / patches.length);
      return {
        patch,
        areaM2: cells * grid.cellM ** 2,
        sunHoursADay: Float64Array.from(cost.directHoursADay),
        lightShare: Float64Array.from(cost.lightShare),
      };
    }),
  );
  return costs.filter((cost) => cost !== null);
}
