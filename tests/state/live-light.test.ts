import { expect, test, vi } from 'vitest';
import { createLocalRunner } from '../../src/jobs/local-runner.ts';
import type { LightResult } from '../../src/light/light-types.ts';
import { moveFeatures } from '../../src/site/actions/move-feature.ts';
import { createLiveLight } from '../../src/state/live-light.ts';
import { createAppStore } from '../../src/state/store.ts';
import { smallSite } from './small-site.ts';

/** An app whose light is worked out in this thread, and the jobs it asked for. */
function begin() {
  const store = createAppStore(smallSite());
  store.getState().show({ step: 'light', picture: 'light-share', cellWantedM: 2 });
  const runner = createLocalRunner();
  const asked: string[] = [];
  const live = createLiveLight(
    store,
    {
      ...runner,
      run: (job, request, options) => {
        asked.push((request as { live?: boolean }).live ? `${job} live` : job);
        return runner.run(job, request, options);
      },
    },
    (state) => state.ground!,
  );
  const signal = new AbortController().signal;
  const tree = store.getState().document.features.find(({ properties }) => properties.kind === 'tree')!;
  return {
    store,
    asked,
    live,
    compute: async (): Promise<LightResult> => {
      let last: LightResult | null = null;
      for (const pass of live.passes(store.getState())) last = await pass(signal, () => {});
      return last!;
    },
    moveTree: (eastM: number) =>
      store.getState().preview((document) => moveFeatures(document, [tree.id], eastM, 0)),
    tree,
  };
}

const season = ({ lightShare }: LightResult) => lightShare.subarray((12 * lightShare.length) / 13);
const furthest = (a: Float32Array, b: Float32Array) =>
  a.reduce((most, share, i) => (Number.isNaN(share) ? most : Math.max(most, Math.abs(share - b[i]))), 0);

test('the first light is computed and kept; then it follows a tree, and at rest it is the tree’s own', async () => {
  const { asked, live, compute, moveTree, store, tree } = begin();
  expect(live.follow(store.getState(), () => {})).toBe(false);
  const first = await compute();
  expect(asked.at(-1)).toBe('light-keep');

  store.getState().select(tree.id);
  await vi.waitFor(() => expect(asked.at(-1)).toBe('light-hold'));
  const shown: LightResult[] = [];
  for (const eastM of [1, 2, 3, 4]) {
    moveTree(eastM);
    expect(live.follow(store.getState(), (result) => shown.push(result))).toBe(true);
  }
  await vi.waitFor(() => expect(shown.length).toBeGreaterThan(1), { timeout: 20_000 });
  // The first place and the last: those between were passed over.
  await vi.waitFor(() => expect(asked.filter((job) => job === 'light-change live')).toHaveLength(2));
  expect(furthest(season(shown.at(-1)!), season(first))).toBeGreaterThan(0.05);

  asked.length = 0;
  const atRest = await compute();
  expect(asked).toEqual(['light-change']);
  const scratch = begin();
  scratch.moveTree(4);
  const exact = season(await scratch.compute());
  expect(furthest(season(atRest), exact)).toBeLessThan(0.0005);
  expect(furthest(season(shown.at(-1)!), exact)).toBeLessThan(0.01);
});

test('another year, height or kind of tree is computed anew', async () => {
  const { asked, live, compute, store, tree } = begin();
  await compute();
  store.getState().show({ year: 5 });
  expect(live.follow(store.getState(), () => {})).toBe(false);
  await compute();
  expect(asked.filter((job) => job === 'light-keep')).toHaveLength(2);
  expect(live.follow(store.getState(), () => {})).toBe(true);
  // Evergreen where only deciduous trees stood: the leaves' calendar is another one.
  store.getState().edit('Another kind', (document) => ({
    ...document,
    features: document.features.map((feature) =>
      feature.id === tree.id
        ? { ...feature, properties: { ...feature.properties, species: 'Picea abies' } }
        : feature,
    ) as typeof document.features,
  }));
  expect(live.follow(store.getState(), () => {})).toBe(true);
  await compute();
  expect(asked.at(-1)).toBe('light-keep');
});
