import type { Darkened } from '../belts/finding-types.ts';
import type { LightScene } from '../light/light-types.ts';
import type { SceneThing } from '../scene/options.ts';
import type { PatchMask } from '../scene/patch-masks.ts';
import type { FeatureId } from '../site/document.ts';
import type { JobRunner, RunOptions } from './messages.ts';
import { runPatchCosts } from './run-patch-costs.ts';

/** What each belt and block takes of every patch's sun over the growing season. */
export async function runDarkened(
  runner: JobRunner,
  scene: LightScene,
  things: readonly SceneThing[],
  patches: readonly PatchMask[],
  options: RunOptions = {},
): Promise<ReadonlyMap<FeatureId, readonly Darkened[]>> {
  const costs = await runPatchCosts(runner, scene, things.length, patches, options);
  const seasonDays = scene.growingDay.reduce((sum, day) => sum + day, 0);
  const found = new Map<FeatureId, readonly Darkened[]>();
  things.forEach(({ id, kind }, thing) => {
    if (kind !== 'belt' && kind !== 'block') return;
    found.set(
      id,
      costs.map(({ patch, sunHoursADay, lightShare }) => ({
        patch: patch.name,
        hoursADay: sunHoursADay[thing],
        seasonHours: sunHoursADay[thing] * seasonDays,
        lightShare: lightShare[thing],
      })),
    );
  });
  return found;
}
