import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { toLonLat } from '../../src/geo/frame.ts';
import { setProperties } from '../../src/site/actions/set-properties.ts';
import { keepComputing, type Work } from '../../src/state/compute.ts';
import { idleComputation } from '../../src/state/lane.ts';
import { pictureRaster } from '../../src/state/picture-raster.ts';
import { keepPlaying, stepYears, togglePlay } from '../../src/state/play-years.ts';
import { readOutAt } from '../../src/state/read-out.ts';
import { createAppStore } from '../../src/state/store.ts';
import { fakeLight, fakeShelter, fakeYears } from './fake-results.ts';
import { smallSite } from './small-site.ts';

const calls: string[] = [];
const pass =
  <R>(name: string, result: R, afterMs = 0) =>
  async () => {
    calls.push(name);
    if (afterMs > 0) await new Promise((resolve) => setTimeout(resolve, afterMs));
    return result;
  };
const work: Work = {
  light: () => [pass('light coarse', fakeLight()), pass('light fine', fakeLight())],
  followLight: () => false,
  followShelter: () => false,
  shelter: () => [pass('shelter', fakeShelter())],
  outlook: () => [pass('outlook', [])],
  costs: () => [pass('costs', [])],
  yearsLook: (_, full) =>
    full
      ? [
          pass('every fifth', fakeYears([0, 5, 10, 15, 20, 25, 30, 35, 40]), 1000),
          pass('all', fakeYears(), 2000),
        ]
      : [pass('curve', { ...fakeYears(), maps: new Map() })],
  lightEnds: () => [pass('light ends', { usual: fakeLight(), ends: new Map(), finer: null })],
  sunTimes: () => [pass('sun times', {} as never)],
  sunTimeEnds: () => [pass('sun time ends', {} as never)],
  shelterEnds: () => [pass('shelter ends', { usual: fakeShelter(), ends: new Map(), finer: null })],
};

beforeEach(() => {
  vi.useFakeTimers();
  calls.length = 0;
});
afterEach(() => vi.useRealTimers());
const settle = () => vi.advanceTimersByTimeAsync(5000);
async function begun() {
  const store = createAppStore(smallSite());
  keepComputing(store, work);
  keepPlaying(store);
  await settle();
  calls.length = 0;
  return store;
}

describe('the years played', () => {
  test('two years go by a second; the maps’ own lanes rest until the play stops', async () => {
    const store = await begun();
    store.getState().show({ yearsOpen: true });
    await settle();
    calls.length = 0;
    togglePlay(store.getState());
    await vi.advanceTimersByTimeAsync(2600);
    expect(store.getState().year).toBe(25);
    expect(calls).toEqual([]);
    expect(store.getState().light.stale).toBe(true);
    togglePlay(store.getState());
    await settle();
    expect(store.getState().year).toBe(25);
    expect(store.getState().light).toMatchObject({ status: 'ready', stale: false });
    // The map showed the year already: it does not fall back to coarse cells.
    expect(calls).toContain('light fine');
    expect(calls).not.toContain('light coarse');
    expect(calls.some((call) => call === 'all' || call === 'every fifth')).toBe(false);
  });

  test('the map waits for a year that is still being worked out', async () => {
    const store = await begun();
    store.getState().show({ year: 20 });
    await settle();
    togglePlay(store.getState());
    await vi.advanceTimersByTimeAsync(2500);
    expect(calls).toContain('every fifth');
    expect(store.getState().year).toBe(20);
    await vi.advanceTimersByTimeAsync(1700);
    expect(store.getState().year).toBeGreaterThan(20);
  });

  test('it stops at the last year, and begins again at the first', async () => {
    const store = await begun();
    store.getState().show({ yearsOpen: true, year: 38 });
    await settle();
    togglePlay(store.getState());
    await vi.advanceTimersByTimeAsync(3000);
    expect(store.getState()).toMatchObject({ year: 40, playing: false });
    togglePlay(store.getState());
    expect(store.getState()).toMatchObject({ year: 0, playing: true });
  });

  test('a step, an edit and another site stop it', async () => {
    const store = await begun();
    togglePlay(store.getState());
    stepYears(store.getState(), -1);
    expect(store.getState()).toMatchObject({ year: 19, playing: false });
    togglePlay(store.getState());
    const tree = store.getState().document.features.find(({ properties }) => properties.kind === 'tree')!;
    store.getState().edit('Rename', (document) => setProperties(document, [tree.id], { tag: 'N9' }));
    expect(store.getState().playing).toBe(false);
    togglePlay(store.getState());
    store.getState().openDocument(smallSite());
    expect(store.getState().playing).toBe(false);
  });
});

describe('the map while the years are followed', () => {
  const followed = () => {
    const store = createAppStore(smallSite());
    store.setState({
      light: { ...idleComputation(), status: 'ready', stale: true, result: fakeLight() },
      shelter: { ...idleComputation(), status: 'ready', stale: true, result: fakeShelter() },
      yearsLook: { ...idleComputation(), status: 'ready', result: fakeYears() },
    });
    store.getState().show({ year: 12 });
    return store;
  };
  const at = (store: ReturnType<typeof followed>) =>
    Object.fromEntries(
      (readOutAt(store.getState(), toLonLat(store.getState().frame, [10, 10]))?.rows ?? []).map((row) => [
        row.label,
        row.value,
      ]),
    );

  test('light of the season is that of the followed year, and the read-out says the same', () => {
    const store = followed();
    const raster = pictureRaster(store.getState())!;
    expect(raster).toMatchObject({ live: true, stale: false });
    expect(raster.values[0]).toBeCloseTo(0.88, 5);
    expect(raster.detail).toContain('year 12');
    expect(at(store).Light).toBe('88 % · open');
  });

  test('sun of the whole year as hours a day; wind as what is cut', () => {
    const store = followed();
    store.getState().show({ picture: 'sun-hours', period: 'year' });
    expect(pictureRaster(store.getState())!.values[0]).toBeCloseTo(10 - 1.2, 5);
    expect(at(store)['Direct sun']).toBe('8.8 h a day');
    store.getState().show({ picture: 'wind-cut', period: 6 });
    expect(pictureRaster(store.getState())!.values[0]).toBeCloseTo(0.12, 5);
    expect(at(store).Wind).toBe('cut by 12 %');
  });

  test('of a single month’s light the years say nothing: the earlier map stays, and says so', () => {
    const store = followed();
    store.getState().show({ period: 4 });
    expect(pictureRaster(store.getState())).toMatchObject({ live: false, stale: true });
  });

  test('the year’s own map takes its place, and years of an earlier site are not shown', () => {
    const store = followed();
    store.setState({ light: { ...idleComputation(), status: 'ready', result: fakeLight() } });
    expect(pictureRaster(store.getState())!.live).toBe(false);
    store.setState({
      light: { ...idleComputation(), status: 'computing', stale: true, result: fakeLight() },
      yearsLook: { ...idleComputation(), status: 'ready', stale: true, result: fakeYears() },
    });
    expect(pictureRaster(store.getState())).toMatchObject({ live: false, stale: true });
  });
});
