import { describe, expect, test } from 'vitest';
import { toLonLat } from '../../src/geo/frame.ts';
import type { FirstLastSun } from '../../src/light/first-last-sun-types.ts';
import { SCENE_ENDS } from '../../src/scene/ends.ts';
import { idleComputation } from '../../src/state/lane.ts';
import { mostInWords } from '../../src/state/most-in-words.ts';
import { pictureRaster } from '../../src/state/picture-raster.ts';
import { readOutAt } from '../../src/state/read-out.ts';
import { createAppStore } from '../../src/state/store.ts';
import { monthOfSun, sunTimeBands } from '../../src/state/sun-times.ts';
import { bandOf } from '../../src/units/bands.ts';
import { smallSite } from './small-site.ts';

/** Two cells beside each other: the western one from 7:30 to 17:50, the eastern one without sun; every month alike. */
const days = Array.from({ length: 12 }, (_, month) => ({
  dayOfMonth: 15,
  // The site keeps the clocks of Halifax: three hours behind UTC in summer, four in winter.
  midnightMs: Date.UTC(2046, month, 15, month > 2 && month < 10 ? 3 : 4),
  riseMin: 340,
  setMin: 1210,
  stepMin: 5,
}));
const result = (shiftMin = 0): FirstLastSun => {
  const both = (value: number, other: number) =>
    Float32Array.from({ length: 24 }, (_, i) => (i % 2 === 0 ? value : other));
  return {
    grid: { columns: 2, rows: 1, cellM: 20, westM: 0, northM: 20 },
    firstMin: both(450 + shiftMin, Number.NaN),
    lastMin: both(1070, Number.NaN),
    sunHours: both(8.2, 0),
    days,
  };
};
const store = () => {
  const made = createAppStore(smallSite());
  made.setState({ sunTimes: { ...idleComputation(), status: 'ready', result: result() } });
  made.getState().show({ picture: 'first-sun', period: 6 });
  return made;
};

describe('first and last sun on the map', () => {
  test('are hours of the clock, and ground without sun is a band of its own', () => {
    const it = store();
    const raster = pictureRaster(it.getState())!;
    expect(raster.values[0]).toBeCloseTo(7.5, 5);
    const named = (value: number) => raster.bands.bands[bandOf(raster.bands, value)].name;
    expect(Array.from(raster.values, named)).toEqual(['7:00 to 8:00', 'no sun that day']);
    expect(raster.detail).toBe('15 July, year 20, half of its beam or more, 0.1 m above the ground');
    it.getState().show({ picture: 'last-sun' });
    const last = pictureRaster(it.getState())!;
    expect(Array.from(last.values, (value) => last.bands.bands[bandOf(last.bands, value)].name)).toEqual([
      '17:00 to 18:00',
      'no sun that day',
    ]);
  });

  test('have bands by full hours after sunrise and before sunset, rising, none of them short', () => {
    for (const [picture, names] of [
      [
        'first-sun',
        ['before 7:00', '7:00 to 8:00', '8:00 to 9:00', '9:00 to 10:00', 'after 10:00', 'no sun that day'],
      ],
      [
        'last-sun',
        [
          'no sun that day',
          'before 16:00',
          '16:00 to 17:00',
          '17:00 to 18:00',
          '18:00 to 19:00',
          'after 19:00',
        ],
      ],
    ] as const) {
      const { bands } = sunTimeBands(result(), picture, 6);
      expect(bands.map(({ name }) => name)).toEqual(names);
      for (let i = 1; i < bands.length; i++) expect(bands[i].from).toBeGreaterThan(bands[i - 1].from);
    }
  });

  test('are of the longest day’s month while no month is chosen', () => {
    expect(monthOfSun({ period: 'season', centre: [0, 45] })).toBe(5);
    expect(monthOfSun({ period: 'year', centre: [0, -43] })).toBe(11);
    expect(monthOfSun({ period: 2, centre: [0, 45] })).toBe(2);
  });

  test('are read out by the site’s clocks with the hours between', () => {
    const it = store();
    const rows = (x: number) => readOutAt(it.getState(), toLonLat(it.getState().frame, [x, 10]))?.rows;
    const zone = it.getState().document.site.timeZone;
    expect(zone).toBe('America/Halifax');
    expect(rows(10)).toContainEqual({ label: 'Sun, 15 July', value: '07:30 to 17:50, 8.2 h' });
    expect(rows(30)).toContainEqual({ label: 'Sun, 15 July', value: 'none all day' });
    it.getState().show({ picture: 'light-share' });
    expect(rows(10)?.some(({ label }) => label.startsWith('Sun, 15'))).toBe(false);
  });

  test('say in minutes what would change them most', () => {
    const it = store();
    const ends = new Map(SCENE_ENDS.map((end) => [end, result(end === 'wide-crowns' ? 12 : 0)]));
    it.setState({
      sunTimeEnds: { ...idleComputation(), status: 'ready', result: { usual: result(), ends, finer: null } },
    });
    expect(mostInWords(it.getState())).toBe(
      'If crowns grow a fifth wider: 12 min later. If crowns grow a fifth narrower: hardly any change.',
    );
  });
});
