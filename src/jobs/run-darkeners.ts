import type { LightScene } from '../light/light-types.ts';
import type { Built } from '../scene/build-scene.ts';
import type { PatchMask } from '../scene/patch-masks.ts';
import type { FeatureId } from '../site/document.ts';
import type { JobRunner, RunOptions } from './messages.ts';
import type { PatchYears } from './run-outlook.ts';
import { runPatchCosts } from './run-patch-costs.ts';

/** When a patch turns dark for good, and what takes most of its light in that year; null: it never does. */
export interface DarkTurn {
  readonly darkFromYear: number | null;
  readonly darkBy: { readonly id: FeatureId; readonly label: string } | null;
}

/** What darkens each of some patches in the year in which it turns dark. @param found of the same patches. */
export const runDarkeners = (
  runner: JobRunner,
  patches: readonly PatchMask[],
  found: readonly PatchYears[],
  sceneAt: (year: number) => Built<LightScene>,
  { signal }: RunOptions = {},
): Promise<DarkTurn[]> =>
  Promise.all(
    found.map(async ({ darkFromYear }, index): Promise<DarkTurn> => {
      if (darkFromYear === null) return { darkFromYear, darkBy: null };
      const { scene, things } = sceneAt(darkFromYear);
      const [cost] = await runPatchCosts(runner, scene, things.length, [patches[index]], { signal });
      const most = things
        .map(({ id, label }, thing) => ({ id, label, lightShare: cost?.lightShare[thing] ?? 0 }))
        .reduce<{ id: FeatureId; label: string; lightShare: number } | null>(
          (one, other) => (other.lightShare > (one?.lightShare ?? 0) ? other : one),
          null,
        );
      return { darkFromYear, darkBy: most && { id: most.id, label: most.label } };
    }),
  );
