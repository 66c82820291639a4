import type { JobRunner } from '../jobs/messages.ts';
import type { Grid } from '../numeric/grid.ts';
import { lightScene } from '../scene/build-scene.ts';
import type { Pass } from './lane.ts';
import type { AppState, ThingCost } from './model.ts';
import { patchesOf } from './patch-outlook.ts';
import { sceneOptions } from './scene-options.ts';

/** The mean over a patch settles with far fewer cells than its map needs. */
const MOST_CELLS = 120;
/** Things that cost less than this are not worth a line: about half a minute a day. */
const LEAST_HOURS = 0.01;

/** What each thing costs the patches in the chosen year: the mean over all their ground, dearest first. */
export const costPasses = (
  state: AppState,
  ground: Grid,
  runner: JobRunner,
): Pass<readonly ThingCost[]>[] => [
  async (signal, onProgress) => {
    const { scene, things } = lightScene(state.document, sceneOptions(state, ground));
    const patches = patchesOf(state, MOST_CELLS);
    const hours = new Float64Array(things.length);
    const shares = new Float64Array(things.length);
    let weightSum = 0;
    let done = 0;
    await Promise.all(
      patches.map(async ({ grid, mask, readingHeightM }) => {
        const cells = mask.reduce((sum, one) => sum + one, 0);
        if (cells === 0) return;
        const cost = await runner.run(
          'light-cost',
          { scene, grid, readingHeightM, mask, thingCount: things.length },
          { signal },
        );
        const weight = cells * grid.cellM ** 2;
        weightSum += weight;
        for (let thing = 0; thing < things.length; thing++) {
          hours[thing] += weight * cost.directHoursADay[thing];
          shares[thing] += weight * cost.lightShare[thing];
        }
        done++;
        onProgress(done / patches.length);
      }),
    );
    return things
      .map(
        ({ id, label }, thing): ThingCost => ({
          id,
          label,
          sunHoursADay: hours[thing] / weightSum,
          lightShare: shares[thing] / weightSum,
        }),
      )
      .filter((cost) => cost.sunHoursADay >= LEAST_HOURS)
      .sort((a, b) => b.sunHoursADay - a.sunHoursADay);
  },
];
