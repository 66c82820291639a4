import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { newSite } from '../../src/site/new-site.ts';
import { keepComputing, type Work } from '../../src/state/compute.ts';
import type { PatchOutlook } from '../../src/state/model.ts';
import { createAppStore } from '../../src/state/store.ts';
import { fakeLight, fakeShelter, fakeYears } from './fake-results.ts';
import { smallSite } from './small-site.ts';

const calls: string[] = [];
const patch: PatchOutlook = {
  id: 'patch-1',
  name: 'Herb ground',
  implicit: false,
  shareToKeep: 0.4,
  areaShareToKeep: 0.7,
  year: 20,
  meanLightShare: 0.8,
  areaShareWithEnoughLight: 1,
  enoughLight: true,
  years: { darkFromYear: null, darkBy: null, looked: [] },
};
const pass =
  <R>(name: string, result: R) =>
  async () => {
    calls.push(name);
    return result;
  };
const fakeWork: Work = {
  light: () => [pass('light coarse', fakeLight()), pass('light fine', fakeLight())],
  followLight: () => false,
  followShelter: () => false,
  shelter: () => [pass('shelter', fakeShelter())],
  outlook: () => [pass('outlook', [patch])],
  costs: () => [pass('costs', [])],
  yearsLook: (_, full) =>
    full ? [pass('years', fakeYears()), pass('all years', fakeYears())] : [pass('years', fakeYears())],
  lightEnds: () => [pass('light ends', { usual: fakeLight(), ends: new Map(), finer: null })],
  sunTimes: () => [pass('sun times', {} as never)],
  sunTimeEnds: () => [pass('sun time ends', {} as never)],
  shelterEnds: () => [pass('shelter ends', { usual: fakeShelter(), ends: new Map(), finer: null })],
};

beforeEach(() => {
  vi.useFakeTimers();
  calls.length = 0;
});
afterEach(() => {
  vi.useRealTimers();
});
const settle = () => vi.advanceTimersByTimeAsync(3000);
const begin = (step: 'ground' | 'light') => {
  const store = createAppStore(smallSite());
  store.getState().show({ step, picture: step === 'light' ? 'light-share' : 'plain' });
  return { store, computing: keepComputing(store, fakeWork) };
};

describe('computing what the screen needs', () => {
  test('on a plain map of the ground only shelter is kept current', async () => {
    begin('ground');
    await settle();
    expect(calls).toEqual(['shelter']);
  });

  test('in Light the map comes first, coarse then fine, then patches, costs and years', async () => {
    const { store } = begin('light');
    await settle();
    expect(calls.indexOf('light coarse')).toBeLessThan(calls.indexOf('outlook'));
    expect(calls.indexOf('outlook')).toBeLessThan(calls.indexOf('costs'));
    expect(calls.indexOf('costs')).toBeLessThan(calls.indexOf('years'));
    expect(store.getState().outlook.result).toEqual([patch]);
    expect(store.getState().light).toMatchObject({ status: 'ready', stale: false });
  });

  test('what would change the map most is asked after the step’s first answers', async () => {
    const { store } = begin('light');
    await settle();
    expect(calls.indexOf('costs')).toBeLessThan(calls.indexOf('light ends'));
    expect(calls.indexOf('light ends')).toBeLessThan(calls.indexOf('years'));
    expect(store.getState().lightEnds.status).toBe('ready');
    expect(calls).not.toContain('shelter ends');
    store.getState().show({ step: 'shelter', picture: 'wind-cut' });
    await settle();
    expect(calls).toContain('shelter ends');
  });

  test('showing an end draws the maps at it and asks for no ends again', async () => {
    const { store } = begin('light');
    await settle();
    calls.length = 0;
    store.getState().show({ shownEnd: 'wide-crowns' });
    await settle();
    expect(calls).toContain('light fine');
    expect(calls).toContain('shelter');
    expect(calls).not.toContain('light ends');
    expect(store.getState().lightEnds).toMatchObject({ status: 'ready', stale: false });
  });

  test('another year marks what would change the map most as old until it is worked out again', async () => {
    const { store } = begin('light');
    await settle();
    store.getState().show({ year: 12 });
    expect(store.getState().lightEnds.stale).toBe(true);
    await settle();
    expect(store.getState().lightEnds).toMatchObject({ status: 'ready', stale: false });
  });

  test('opening another site forgets the last one’s maps', async () => {
    const { store } = begin('light');
    await settle();
    expect(store.getState().light.result).not.toBeNull();
    store.getState().openDocument(newSite([171.9, -43.6], 'Elsewhere', 2027));
    for (const answer of ['light', 'shelter', 'outlook', 'costs', 'lightEnds', 'yearsLook'] as const)
      expect(store.getState()[answer], answer).toMatchObject({ status: 'idle', result: null, stale: false });
    expect(store.getState()).toMatchObject({ windClimate: null, assumed: [] });
    await settle();
    expect(store.getState().light.result).toBeNull();
  });

  test('a stop lets nothing begin that was waiting its turn', async () => {
    const { store, computing } = begin('light');
    await vi.advanceTimersByTimeAsync(125);
    computing.cancel();
    calls.length = 0;
    await settle();
    expect(calls).toEqual([]);
    expect(store.getState().lightEnds.status).not.toBe('computing');
  });

  test('another year computes again, and until then the old answer is marked', async () => {
    const { store } = begin('light');
    await settle();
    calls.length = 0;
    store.getState().show({ year: 12 });
    expect(store.getState().light).toMatchObject({ status: 'computing', stale: true });
    await settle();
    expect(calls).toContain('light fine');
    expect(store.getState().light).toMatchObject({ status: 'ready', stale: false });
  });

  test('another month, a message or a moving pointer computes nothing', async () => {
    const { store } = begin('light');
    await settle();
    calls.length = 0;
    store.getState().show({ period: 4 });
    store.getState().setPointer([-64.5, 45.1]);
    store.getState().say({ tone: 'plain', text: 'hello' });
    await settle();
    expect(calls).toEqual([]);
  });

  test('a slider that runs through the years computes only where it rests', async () => {
    const { store } = begin('light');
    await settle();
    calls.length = 0;
    for (let year = 21; year <= 30; year++) {
      store.getState().show({ year });
      await vi.advanceTimersByTimeAsync(30);
    }
    await settle();
    expect(calls.filter((call) => call === 'light fine')).toHaveLength(1);
  });

  test('a stop keeps what is there, and "again" starts over', async () => {
    const { store, computing } = begin('light');
    computing.cancel();
    await settle();
    expect(calls).toEqual([]);
    expect(store.getState().light.status).toBe('cancelled');
    computing.again();
    await settle();
    expect(store.getState().light.status).toBe('ready');
  });

  test('"again" leaves alone what is there', async () => {
    const { store, computing } = begin('light');
    await settle();
    const { light } = store.getState();
    calls.length = 0;
    computing.again();
    await settle();
    expect(calls).toEqual([]);
    expect(store.getState().light).toBe(light);
  });

  test('an empty site asks for nothing', async () => {
    const store = createAppStore();
    keepComputing(store, fakeWork);
    await settle();
    expect(calls).toEqual([]);
  });
});
