import { expect, test, vi } from 'vitest';
import { type LonLat, toLonLat } from '../../src/geo/frame.ts';
import { createLocalRunner } from '../../src/jobs/local-runner.ts';
import { createAppStore } from '../../src/state/store.ts';
import { keepWindFromHere, windPasses } from '../../src/state/wind-from-here.ts';
import { smallSiteWithBelt } from './small-site.ts';

test('what failed is worked out when it is asked for again, and its last good answer stays until then', async () => {
  const store = createAppStore(smallSiteWithBelt());
  const runner = createLocalRunner();
  let fails = true;
  const kept = keepWindFromHere(store, (state, ground, at) => [
    (signal, onProgress) =>
      fails
        ? Promise.reject(new Error('no memory'))
        : windPasses(state, ground, at, runner)[0](signal, onProgress),
  ]);
  store.getState().show({ windAt: toLonLat(store.getState().frame, [20, 15]), dialog: 'wind-here' });
  await vi.waitFor(() => expect(store.getState().windHere.status).toBe('failed'));
  expect(store.getState().windHere.message).toBe(
    'This could not be worked out (no memory). Nothing is lost: change anything, or have it worked out again.',
  );
  fails = false;
  kept.again();
  await vi.waitFor(() => expect(store.getState().windHere.status).toBe('ready'), { timeout: 20_000 });
  const { result } = store.getState().windHere;
  kept.again();
  expect(store.getState().windHere).toMatchObject({ status: 'ready', result });
});

test('the wind of a spot is worked out while its dialog is open, for the spot and the year, and goes stale when it is closed', async () => {
  const store = createAppStore(smallSiteWithBelt());
  const runner = createLocalRunner();
  const years: number[] = [];
  keepWindFromHere(store, (state, ground, at) => {
    const [pass] = windPasses(state, ground, at, runner);
    return [
      (signal, onProgress) => {
        years.push(state.year);
        return pass(signal, onProgress);
      },
    ];
  });
  const at: LonLat = toLonLat(store.getState().frame, [20, 15]);
  store.getState().show({ windAt: at });
  expect(store.getState().windHere.status).toBe('idle');
  const ready = () =>
    vi.waitFor(() => expect(store.getState().windHere.status).toBe('ready'), { timeout: 20_000 });
  store.getState().show({ dialog: 'wind-here' });
  await ready();
  const { at: spot, things, lonLat } = store.getState().windHere.result!;
  expect(lonLat).toBe(at);
  expect(spot.sectors).toHaveLength(16);
  const west = spot.sectors.find(({ fromDeg }) => fromDeg === 270)!;
  expect(things[west.by[0].thing].kind).toBe('belt');
  expect(west.by[0].distanceM).toBeCloseTo(19, 0);
  expect(west.share[2]).toBeLessThan(0.5);

  store.getState().show({ year: 5 });
  await ready();
  expect(years).toEqual([20, 5]);
  store.getState().show({ dialog: null });
  store.getState().show({ year: 8 });
  expect(store.getState().windHere).toMatchObject({ status: 'ready', stale: true });
  expect(years).toHaveLength(2);
});
