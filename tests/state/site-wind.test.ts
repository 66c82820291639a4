import { describe, expect, test } from 'vitest';
import { shelterScene } from '../../src/scene/build-scene.ts';
import { sceneOptions } from '../../src/state/scene-options.ts';
import { pullWind, roseOf, type SiteWind, setCalms, windOfSite } from '../../src/state/site-wind.ts';
import { createAppStore } from '../../src/state/store.ts';
import { windFromWords } from '../../src/state/wind-in-words.ts';
import { tableOfWind, windFromTyped } from '../../src/state/wind-table.ts';
import { smallSite } from './small-site.ts';

type Store = ReturnType<typeof createAppStore>;
const windOf = (store: Store): SiteWind => {
  const answer = windOfSite(store.getState());
  if ('wrong' in answer) throw new Error(answer.wrong);
  return answer.wind;
};
const west = (store: Store, season: 'growing' | 'rest' | 'year') => roseOf(windOf(store), season).sectors[12];

describe('the wind drawn by hand', () => {
  test('a drag of many steps is one edit, and undone the site has no wind of its own again', () => {
    const store = createAppStore(smallSite());
    expect(windOf(store).rests.on).toBe('nothing');
    for (const share of [0.1, 0.2, 0.3])
      store.getState().preview((site) => pullWind(site, null, 'year', { point: 12, share }));
    store.getState().commitGesture('Pull the wind from the west');
    expect(west(store, 'growing').frequency).toBeCloseTo(0.3, 4);
    expect(windOf(store).rests.on).toBe('drawn');
    expect(store.getState().document.site.wind?.sectors).toHaveLength(16);
    store.getState().undo();
    expect(store.getState().document.site.wind ?? null).toBeNull();
    expect(store.getState().undoLabel).toBeNull();
  });
  test('one season is pulled without the other, and the whole year is their mean by days', () => {
    const store = createAppStore(smallSite());
    const pull = (season: 'growing' | 'rest', share: number) =>
      store.getState().edit('Pull', (site) => pullWind(site, null, season, { point: 12, share }));
    pull('growing', 0.4);
    pull('rest', 0.2);
    expect([west(store, 'growing').frequency, west(store, 'rest').frequency]).toEqual([
      expect.closeTo(0.4, 4),
      expect.closeTo(0.2, 4),
    ]);
    expect(west(store, 'year').frequency).toBeCloseTo((0.4 * 183 + 0.2 * 182) / 365, 4);
    store.getState().edit('Calms', (site) => setCalms(site, null, 'rest', 0.1));
    expect(windOf(store).climate.rest.calmShare).toBe(0.1);
    expect(west(store, 'rest').frequency).toBeCloseTo(0.18, 4);
  });
  test('the engine takes what was drawn', () => {
    const store = createAppStore(smallSite());
    store
      .getState()
      .edit('Pull', (site) => pullWind(site, null, 'year', { point: 12, share: 0.5, meanSpeedMps: 7 }));
    const state = store.getState();
    const { scene } = shelterScene(state.document, sceneOptions(state, state.ground!));
    expect(scene.climate.growing.sectors[12]).toMatchObject({ fromDeg: 270, meanSpeedMps: 7 });
    expect(scene.climate).toEqual(windOf(store).climate);
  });
});

describe('the wind typed as a table', () => {
  test('comes back as it was when its own lines are taken', () => {
    const store = createAppStore(smallSite());
    store.getState().edit('Pull', (site) => pullWind(site, null, 'growing', { point: 12, share: 0.4 }));
    const before = windOf(store).climate;
    const read = windFromTyped(tableOfWind(store.getState(), 'knots'), 'knots', 10, undefined);
    if ('wrong' in read) throw new Error(read.wrong);
    store.getState().edit('Table', (site) => ({ ...site, site: { ...site.site, wind: read.wind } }));
    const after = windOf(store);
    expect(after.rests).toMatchObject({ on: 'table', factor: 1 });
    before.growing.sectors.forEach((sector, i) => {
      const again = after.climate.growing.sectors[i];
      expect(again.frequency).toBeCloseTo(sector.frequency, 2);
      expect(Math.abs(again.meanSpeedMps - sector.meanSpeedMps)).toBeLessThan(0.03);
    });
  });
  test('says what is wrong, and is kept off the site', () => {
    expect(windFromTyped('SW 18', 'm/s', 10, undefined)).toEqual({
      wrong: expect.stringContaining('Line 1 is "sw 18"'),
    });
  });
  test('keeps the land around the site', () => {
    const read = windFromTyped('SW 100 5', 'm/s', 4, 0.5);
    expect('wind' in read && read.wind).toMatchObject({ heightM: 4, siteRoughnessM: 0.5, origin: 'table' });
  });
});

test('a wind said from one of the eight directions covers the sixteenths beside it', () => {
  const { sectors = [], origin } = windFromWords([
    { from: 225, season: 'year', force: 6, howOften: 'often' },
  ]);
  expect(origin).toBe('words');
  const from = (deg: number) => sectors.find(({ fromDeg }) => fromDeg === deg)?.frequency ?? 0;
  expect(from(202.5)).toBeCloseTo(from(247.5), 9);
  expect(from(225)).toBeGreaterThan(from(202.5));
  expect(from(202.5)).toBeGreaterThan(2 * from(45));
});
