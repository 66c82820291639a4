import { describe, expect, test } from 'vitest';
import { computeFirstLastSun } from '../../src/light/first-last-sun.ts';
import type { LightScene } from '../../src/light/light-types.ts';
import type { GridSpec } from '../../src/numeric/grid.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import { plainScene } from './plain-scene.ts';

const HERE: GridSpec = { columns: 1, rows: 1, cellM: 0.2, westM: -0.1, northM: 0.1 };
const day = (scene: LightScene, grid = HERE) =>
  runToEnd(computeFirstLastSun({ scene, grid, readingHeightM: 0 }));
const MARCH = 2;
const JULY = 6;
/** A long hedge to the east, 1 m thick, through which a level ray straight across lets exp(-depth). */
const hedge = (depthOn: number, depthOff = depthOn, leafClass = 0) => ({
  ring: [20, -1e4, 21, -1e4, 21, 1e4, 20, 1e4],
  top: 12,
  depthOn,
  depthOff,
  leafClass,
});

describe('first and last sun of the day', () => {
  test('the sun counts where half of the beam or more comes through', () => {
    const open = day(plainScene());
    const thin = day(plainScene({ pieces: [hedge(0.1)] }));
    const dense = day(plainScene({ pieces: [hedge(8)] }));
    expect(thin.firstMin[MARCH]).toBe(open.firstMin[MARCH]);
    expect(dense.firstMin[MARCH]).toBeGreaterThan(open.firstMin[MARCH] + 60);
    expect(dense.lastMin[MARCH]).toBe(open.lastMin[MARCH]);
  });

  test('leaves of the day count: a hedge without them lets the morning sun through', () => {
    // Class 1 is in leaf on days 120 to 299: in July, not in March.
    const open = day(plainScene());
    const { firstMin } = day(plainScene({ pieces: [hedge(8, 0.05, 1)] }));
    expect(firstMin[MARCH]).toBe(open.firstMin[MARCH]);
    expect(firstMin[JULY]).toBeGreaterThan(open.firstMin[JULY] + 60);
  });

  test('shade between the first and the last sun is taken off its hours', () => {
    const open = day(plainScene());
    // A tower to the south hides the middle of the day.
    const pieces = [{ ring: [-3, -16, 3, -16, 3, -10, -3, -10], top: 60 }];
    const found = day(plainScene({ pieces }));
    expect(found.firstMin[MARCH]).toBe(open.firstMin[MARCH]);
    expect(found.lastMin[MARCH]).toBe(open.lastMin[MARCH]);
    // It stands 10 m away and 6 m wide: 2 * atan(3 / 10) of azimuth, 33 degrees about noon.
    expect(found.sunHours[MARCH]).toBeLessThan(open.sunHours[MARCH] - 1);
    expect(found.sunHours[MARCH]).toBeGreaterThan(open.sunHours[MARCH] - 2.5);
  });

  test('inside a building there is no answer; where the sun does not come there is none and 0 hours', () => {
    const building = { ring: [-3, -3, 3, -3, 3, 3, -3, 3], top: 5 };
    const inside = day(plainScene({ pieces: [building] }));
    expect(inside.sunHours[JULY]).toBeNaN();
    const winter = day(plainScene({ latDeg: 75 }));
    expect(winter.days[11]).toMatchObject({ dayOfMonth: 15, riseMin: null, setMin: null, stepMin: 0 });
    expect(winter.firstMin[11]).toBeNaN();
    expect(winter.sunHours[11]).toBe(0);
    // The midnight sun.
    expect(winter.sunHours[5]).toBeCloseTo(24, 3);
  });

  test('steps are even and no longer than five minutes', () => {
    for (const { riseMin, setMin, stepMin } of day(plainScene()).days) {
      expect(stepMin).toBeLessThanOrEqual(5);
      const steps = (setMin! - riseMin!) / stepMin;
      expect(steps).toBeCloseTo(Math.round(steps), 6);
    }
  });

  test('chosen rows alone are those of the whole grid', () => {
    const scene = plainScene({ pieces: [hedge(1.2)] });
    const whole: GridSpec = { columns: 3, rows: 5, cellM: 4, westM: -5, northM: 9 };
    const all = day(scene, whole);
    const { firstMin } = runToEnd(
      computeFirstLastSun({ scene, grid: whole, readingHeightM: 0, rows: { first: 1, step: 2 } }),
    );
    expect(firstMin).toHaveLength(12 * 2 * 3);
    for (let month = 0; month < 12; month++)
      for (const [k, row] of [1, 3].entries())
        expect(firstMin[month * 6 + k * 3]).toBeCloseTo(all.firstMin[month * 15 + row * 3], 3);
  });

  test('what a cell gets does not depend on the grid it is computed in, over the edges of tiles too', () => {
    const scene = plainScene({
      crowns: [
        { x: 10, y: -8, base: 1, top: 9, radius: 4, depthOn: 0.6 },
        { x: 55, y: -20, base: 1, top: 12, radius: 5, depthOn: 0.4 },
      ],
      pieces: [hedge(1.2)],
    });
    const whole: GridSpec = { columns: 70, rows: 3, cellM: 1, westM: -5, northM: 2 };
    const all = day(scene, whole);
    const column = 66;
    const one = day(scene, { columns: 1, rows: 3, cellM: 1, westM: whole.westM + column, northM: 2 });
    for (let month = 0; month < 12; month++)
      for (let row = 0; row < 3; row++) {
        const i = month * 210 + row * 70 + column;
        expect(all.firstMin[i]).toBeCloseTo(one.firstMin[month * 3 + row], 2);
        expect(all.lastMin[i]).toBeCloseTo(one.lastMin[month * 3 + row], 2);
        expect(all.sunHours[i]).toBeCloseTo(one.sunHours[month * 3 + row], 3);
      }
  });
});
