import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { createLocalRunner } from '../../src/jobs/local-runner.ts';
import { setShelterEffect } from '../../src/state/shelter-effect-here.ts';
import { awaitsGrowth, keepGrowthStepped } from '../../src/state/step-growth.ts';
import { createAppStore } from '../../src/state/store.ts';
import { smallSiteWithBelt } from './small-site.ts';

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
});
afterEach(() => {
  vi.useRealTimers();
});
const settled = async (isReady: () => boolean) => {
  await vi.advanceTimersByTimeAsync(500);
  vi.useRealTimers();
  await vi.waitFor(() => expect(isReady()).toBe(true), { timeout: 20_000 });
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
};

test('growth is stepped where shelter is reckoned to speed it, and every plan follows; else nothing is', async () => {
  const store = createAppStore(smallSiteWithBelt());
  const kept = keepGrowthStepped(store, createLocalRunner());
  const heightM = () => store.getState().grown.things.find(({ kind }) => kind === 'tree')!.heightM;
  const ready = () => store.getState().stepped.status === 'ready' && !store.getState().stepped.stale;
  expect(store.getState().stepped.status).toBe('idle');
  expect(awaitsGrowth(store.getState())).toBe(false);
  const open = heightM();

  setShelterEffect(store.getState(), { usual: 1.5 });
  expect(store.getState().document.site.shelterEffect).toEqual({ usual: 1.5, most: 1.5 });
  expect(awaitsGrowth(store.getState())).toBe(true);
  await settled(ready);
  expect(awaitsGrowth(store.getState())).toBe(false);
  expect(heightM()).toBeGreaterThan(open + 0.05);

  // What changes nothing of growth keeps what is known, so that no map is drawn anew.
  const known = store.getState().stepped.result;
  const tree = store.getState().document.features.find(({ properties }) => properties.kind === 'tree')!;
  store.getState().edit('Name it', (document) => ({
    ...document,
    features: document.features.map((one) =>
      one === tree ? ({ ...one, properties: { ...one.properties, name: 'Old friend' } } as typeof one) : one,
    ),
  }));
  expect(store.getState().stepped.result).toBe(known);
  await settled(ready);
  expect(store.getState().stepped.result).toBe(known);

  store.getState().undo();
  store.getState().undo();
  expect(store.getState().document.site.shelterEffect).toBeUndefined();
  expect(store.getState().stepped).toMatchObject({ status: 'idle', result: null });
  expect(heightM()).toBeCloseTo(open, 9);
  kept.dispose();
});

test('the most is never less than what is reckoned with', () => {
  const store = createAppStore(smallSiteWithBelt());
  const effect = () => store.getState().document.site.shelterEffect;
  setShelterEffect(store.getState(), { most: 2 });
  expect(effect()).toEqual({ usual: 1, most: 2 });
  setShelterEffect(store.getState(), { usual: 1.5 });
  setShelterEffect(store.getState(), { most: 1.2 });
  expect(effect()).toEqual({ usual: 1.2, most: 1.2 });
});
