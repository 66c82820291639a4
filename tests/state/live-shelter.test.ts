import { expect, test, vi } from 'vitest';
import { createLocalRunner } from '../../src/jobs/local-runner.ts';
import { moveFeatures } from '../../src/site/actions/move-feature.ts';
import { createAppStore } from '../../src/state/store.ts';
import { workersWork } from '../../src/state/work.ts';
import type { ShelterResult } from '../../src/wind/shelter-types.ts';
import { smallSiteWithBelt } from './small-site.ts';

/** An app whose shelter is worked out in this thread, and the jobs it asked for. */
function begin() {
  const store = createAppStore(smallSiteWithBelt());
  store.getState().show({ step: 'shelter', picture: 'wind-cut', cellWantedM: 2 });
  const asked: string[] = [];
  const runner = createLocalRunner();
  const work = workersWork(store, {
    ...runner,
    run: (job, request, options) => {
      asked.push(job);
      return runner.run(job, request, options);
    },
  });
  const belt = store.getState().document.features.find(({ properties }) => properties.kind === 'belt')!;
  return {
    store,
    asked,
    work,
    compute: async (): Promise<ShelterResult> => {
      let last: ShelterResult | null = null;
      for (const pass of work.shelter(store.getState()))
        last = await pass(new AbortController().signal, () => {});
      return last!;
    },
    moveBelt: (eastM: number) =>
      store.getState().preview((document) => moveFeatures(document, [belt.id], eastM, 0)),
  };
}

const furthest = (a: Float32Array, b: Float32Array) =>
  a.reduce((most, share, i) => (Number.isNaN(share) ? most : Math.max(most, Math.abs(share - b[i]))), 0);

test('the shelter follows a belt in the hand; at rest it is the belt’s own, and in fine cells at once', async () => {
  const { asked, work, compute, moveBelt, store } = begin();
  expect(work.followShelter(store.getState(), () => {})).toBe(false);
  const first = await compute();
  const shown: ShelterResult[] = [];
  for (const eastM of [2, 4, 6, 8]) {
    moveBelt(eastM);
    expect(work.followShelter(store.getState(), (result) => shown.push(result))).toBe(true);
  }
  // The first place and the last: those between were passed over.
  await vi.waitFor(() => expect(shown).toHaveLength(2), { timeout: 20_000 });
  expect(asked.filter((job) => job === 'shelter-follow')).toHaveLength(2);
  expect(furthest(shown[1].windShare, first.windShare)).toBeGreaterThan(0.05);

  expect(work.shelter(store.getState())).toHaveLength(1);
  const atRest = await compute();
  const scratch = begin();
  scratch.moveBelt(8);
  expect(atRest.windShare).toEqual((await scratch.compute()).windShare);
  const jump = shown[1].windShare.reduce(
    (sum, share, i) => sum + (Number.isNaN(share) ? 0 : Math.abs(share - atRest.windShare[i])),
    0,
  );
  expect(jump / atRest.windShare.length).toBeLessThan(0.01);
});

test('another year, another picture and another option are not followed', async () => {
  const { work, compute, store } = begin();
  await compute();
  const { shelterOptions } = store.getState();
  for (const change of [
    { year: 3 },
    { picture: 'light-share' as const },
    { shelterOptions: { ...shelterOptions, obliqueWind: !shelterOptions.obliqueWind } },
  ]) {
    store.setState({ year: 20, picture: 'wind-cut', shelterOptions, ...change });
    expect(work.followShelter(store.getState(), () => {})).toBe(false);
  }
});
