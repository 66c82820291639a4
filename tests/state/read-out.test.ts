import { describe, expect, test } from 'vitest';
import { toLonLat } from '../../src/geo/frame.ts';
import { setSite } from '../../src/site/actions/set-site.ts';
import { idleComputation } from '../../src/state/lane.ts';
import { readOutAt } from '../../src/state/read-out.ts';
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
const readAt = (it: ReturnType<typeof store>, xM: number, yM: number) => {
  const read = readOutAt(it.getState(), toLonLat(it.getState().frame, [xM, yM]));
  return {
    title: read?.title,
    ...Object.fromEntries((read?.rows ?? []).map((row) => [row.label, row.value])),
  };
};

describe('the read-out', () => {
  test('names the patch and says light, sun, wind and ground', () => {
    expect(readAt(store(), 10, 10)).toEqual({
      title: 'Patch “Herb ground”',
      Light: '80 % · fruiting light',
      'Direct sun': '9.8 h a day',
      'Daily light': '30.0 mol/m² a day',
      Wind: 'cut by 50 %',
      Ground: '0.0 m, level',
    });
  });

  test('outside the patch it names the field, and takes the cell it is in', () => {
    const read = readAt(store(), 30, 15);
    expect(read).toMatchObject({
      title: 'Field “Long Meadow”',
      Light: '40 % · half shade',
      Wind: 'cut by 75 %',
    });
  });

  test('beyond what was computed it says what is still known', () => {
    const read = readAt(store(), 60, 60);
    expect(read.title).toBe('Outside the fields');
    expect(Object.keys(read)).toEqual(['title', 'Ground']);
  });

  test('the fall of the ground is said in words', () => {
    const it = store();
    it.getState().edit('Fall', (site) =>
      setSite(site, { terrainPlane: { fallDeg: (Math.atan(1 / 15) * 180) / Math.PI, towardDeg: 135 } }),
    );
    expect(readAt(it, 10, 10)).toMatchObject({
      Ground: expect.stringMatching(/falls 1 in 15 to the south-east$/),
    });
  });

  test('lengths follow the person’s measures', () => {
    const it = store();
    it.getState().show({ unitSystem: 'imperial' });
    expect(readAt(it, 10, 10)).toMatchObject({ Ground: '0.0 ft, level' });
  });

  test('wind that blows harder is said so, never as a cut below zero', () => {
    const it = store();
    const shelter = fakeShelter();
    shelter.windShare.fill(1.12);
    it.setState({ shelter: { ...idleComputation(), status: 'ready', result: shelter } });
    expect(readAt(it, 10, 10)).toMatchObject({ Wind: 'stronger by 12 %' });
  });
});
