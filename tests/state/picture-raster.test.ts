import { describe, expect, test } from 'vitest';
import { idleComputation } from '../../src/state/lane.ts';
import { pictureRaster } from '../../src/state/picture-raster.ts';
import { createAppStore } from '../../src/state/store.ts';
import { fakeLight, fakeShelter } from './fake-results.ts';
import { smallSite } from './small-site.ts';

const store = () => {
  const made = createAppStore(smallSite());
  made.setState({
    light: { ...idleComputation(), status: 'ready', result: fakeLight() },
    shelter: { ...idleComputation(), status: 'ready', result: fakeShelter() },
  });
  return made;
};

describe('the raster of the picture', () => {
  test('light of the season is the season’s own band', () => {
    const raster = pictureRaster(store().getState());
    expect(Array.from(raster!.values)).toEqual([Math.fround(0.8), Math.fround(0.4)]);
    expect(raster!.detail).toBe('growing season, year 20, 0.1 m above the ground');
  });

  test('hours of sun are a mean a day of the month', () => {
    const it = store();
    it.getState().show({ picture: 'sun-hours', period: 0 });
    expect(pictureRaster(it.getState())!.values[0]).toBeCloseTo(1, 5);
    it.getState().show({ period: 3 });
    expect(pictureRaster(it.getState())!.values[0]).toBeCloseTo(10, 5);
  });

  test('daily light of the year weighs the months by their days', () => {
    const it = store();
    it.getState().show({ picture: 'daily-light', period: 'year' });
    expect(pictureRaster(it.getState())!.values[0]).toBeCloseTo((31 * 5 + 334 * 30) / 365, 3);
  });

  test('wind is shown as what is cut, and a winter month means the rest of the year', () => {
    const it = store();
    it.getState().show({ picture: 'wind-cut', period: 'season' });
    expect(pictureRaster(it.getState())!.values[0]).toBeCloseTo(0.5, 5);
    it.getState().show({ period: 0 });
    expect(pictureRaster(it.getState())!.values[0]).toBeCloseTo(0.4, 5);
    it.getState().show({ period: 6 });
    expect(pictureRaster(it.getState())!.values[0]).toBeCloseTo(0.5, 5);
  });

  test('is the same object until something that matters changes', () => {
    const it = store();
    const first = pictureRaster(it.getState());
    it.getState().setPointer([-64.5, 45.1]);
    it.getState().say({ tone: 'plain', text: 'hello' });
    expect(pictureRaster(it.getState())).toBe(first);
    it.getState().show({ period: 5 });
    expect(pictureRaster(it.getState())).not.toBe(first);
  });

  test('a plain map has none', () => {
    const it = store();
    it.getState().show({ picture: 'plain' });
    expect(pictureRaster(it.getState())).toBeNull();
  });
});
