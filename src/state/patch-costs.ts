import type { JobRunner } from '../jobs/messages.ts';
import { runPatchCosts } from '../jobs/run-patch-costs.ts';
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
    const costs = await runPatchCosts(runner, scene, things.length, patchesOf(state, MOST_CELLS), {
      signal,
      onProgress,
    });
    const groundM2 = costs.reduce((sum, { areaM2 }) => sum + areaM2, 0);
    const mean = (thing: number, of: 'sunHoursADay' | 'lightShare') =>
      costs.reduce((sum, cost) => sum + cost.areaM2 * cost[of][thing], 0) / groundM2;
    return things
      .map(
        ({ id, label }, thing): ThingCost => ({
          id,
          label,
          sunHoursADay: mean(thing, 'sunHoursADay'),
          lightShare: mean(thing, 'lightShare'),
        }),
      )
      .filter((cost) => cost.sunHoursADay >= LEAST_HOURS)
      .sort((a, b) => b.sunHoursADay - a.sunHoursADay);
  },
];
