import { describe, expect, test } from 'vitest';
import type { AtEnds } from '../../src/jobs/run-ends.ts';
import type { LightResult } from '../../src/light/light-types.ts';
import { SCENE_ENDS, type SceneEnd } from '../../src/scene/ends.ts';
import { idleComputation } from '../../src/state/lane.ts';
import { causeRows, endChoices, mostInWords } from '../../src/state/most-in-words.ts';
import { pictureRaster } from '../../src/state/picture-raster.ts';
import { createAppStore } from '../../src/state/store.ts';
import { causesOfMap } from '../../src/state/what-would-change.ts';
import { fakeLight, fakeShelter } from './fake-results.ts';
import { smallSite } from './small-site.ts';

/** The fake light with every share and all hours multiplied. */
const times = (factor: number): LightResult => {
  const light = fakeLight();
  return {
    ...light,
    lightShare: light.lightShare.map((share) => share * factor),
    directHours: light.directHours.map((hours) => hours * factor),
  };
};
const lightEnds = (factors: Partial<Record<SceneEnd, number>>): AtEnds<LightResult> => ({
  usual: fakeLight(),
  ends: new Map(SCENE_ENDS.map((end) => [end, times(factors[end] ?? 1)])),
  finer: null,
});
const storeWith = (factors: Partial<Record<SceneEnd, number>>) => {
  const store = createAppStore(smallSite());
  store.setState({
    light: { ...idleComputation(), status: 'ready', result: fakeLight() },
    shelter: { ...idleComputation(), status: 'ready', result: fakeShelter() },
    lightEnds: { ...idleComputation(), status: 'ready', result: lightEnds(factors) },
  });
  return store;
};
const FACTORS = {
  'wide-crowns': 0.88,
  'narrow-crowns': 1.09,
  'slow-growth': 1.05,
  'fast-growth': 0.96,
} as const;

describe('what would change the map most', () => {
  test('is said with its size, both ends of the largest cause', () => {
    expect(mostInWords(storeWith(FACTORS).getState())).toBe(
      'If crowns grow a fifth wider: 12 % darker. If crowns grow a fifth narrower: 9 % lighter.',
    );
  });

  test('follows the map that is shown', () => {
    const store = storeWith(FACTORS);
    store.getState().show({ picture: 'sun-hours' });
    expect(mostInWords(store.getState())).toContain('12 % less sun');
    store.getState().show({ picture: 'slope' });
    expect(mostInWords(store.getState())).toContain('Only other levels of the ground');
    store.getState().show({ picture: 'plain' });
    expect(mostInWords(store.getState())).toBeNull();
    store.getState().show({ picture: 'wind-cut' });
    expect(mostInWords(store.getState())).toBeNull();
  });

  test('of the wind is said as what it is cut by', () => {
    const store = storeWith({});
    const share = (factor: number) => {
      const shelter = fakeShelter();
      return { ...shelter, windShare: shelter.windShare.map((each) => each * factor) };
    };
    store.setState({
      picture: 'wind-cut',
      shelterEnds: {
        ...idleComputation(),
        status: 'ready',
        result: {
          usual: fakeShelter(),
          ends: new Map(SCENE_ENDS.map((end) => [end, share(end === 'slow-growth' ? 1.2 : 1)])),
          finer: share(1.01),
        },
      },
    });
    // The mean of 0.5 and 0.25 is 0.375.
    expect(mostInWords(store.getState())).toBe(
      'If everything grows slowly: cut by 55 % instead of 63 %. If everything grows fast: hardly any change.',
    );
    expect(causesOfMap(store.getState())!.map(({ cause }) => cause)).toEqual([
      'growth',
      'engine',
      'crown-spread',
      'foliage',
    ]);
  });

  test('says so where nothing that grows reaches the ground, or where all of it is hardly anything', () => {
    expect(mostInWords(storeWith({}).getState())).toBe(
      'Nothing that grows reaches this ground. The sums themselves are off by 0.1 % of open light in the mean.',
    );
    expect(mostInWords(storeWith({ 'wide-crowns': 0.9999 }).getState())).toContain('Hardly anything');
  });

  test('an engine error larger than everything else comes first', () => {
    const said = mostInWords(storeWith({ 'wide-crowns': 0.99, 'narrow-crowns': 1.001 }).getState());
    expect(said).toMatch(/^If crowns/);
    const store = storeWith({ 'wide-crowns': 0.99 });
    const coarse = { ...fakeLight(), quadratureError: { mean: 0.05, p99: 0.1 } };
    store.setState({
      lightEnds: {
        ...idleComputation(),
        status: 'ready',
        result: { ...lightEnds({ 'wide-crowns': 0.99 }), usual: coarse },
      },
    });
    expect(mostInWords(store.getState())).toMatch(/^The sums themselves are off by 5 % of open light/);
  });

  test('is listed with both ends of every cause, and the map can be drawn at each', () => {
    const store = storeWith(FACTORS);
    const causes = causesOfMap(store.getState())!;
    const rows = causeRows('light-share', causes);
    expect(rows.map(({ name }) => name)).toEqual([
      'Crown spread',
      'Growth',
      'The sums themselves',
      'Foliage',
    ]);
    expect(rows[0].ends).toEqual(['a fifth wider: −12 %', 'a fifth narrower: +9 %']);
    expect(endChoices('light-share', causes)[0]).toEqual({
      end: 'wide-crowns',
      words: 'crowns a fifth wider: −12 %',
    });
    expect(endChoices('light-share', null)).toHaveLength(6);
    expect(endChoices('wind-cut', null)).toHaveLength(6);
    expect(endChoices('slope', null)).toEqual([]);
    store.getState().show({ shownEnd: 'fast-growth' });
    expect(pictureRaster(store.getState())!.supposed).toBe('fast growth');
    expect(mostInWords(store.getState())).toContain('12 % darker');
  });

  test('is the same object until something that matters changes', () => {
    const store = storeWith(FACTORS);
    const first = causesOfMap(store.getState());
    store.getState().show({ shownEnd: 'wide-crowns', message: null } as never);
    expect(causesOfMap(store.getState())).toBe(first);
  });
});
