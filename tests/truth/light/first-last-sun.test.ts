import { describe, expect, test } from 'vitest';
import { computeFirstLastSun } from '../../../src/light/first-last-sun.ts';
import type { FirstLastSun } from '../../../src/light/first-last-sun-types.ts';
import type { LightScene } from '../../../src/light/light-types.ts';
import type { Grid } from '../../../src/numeric/grid.ts';
import { runToEnd } from '../../../src/numeric/steps.ts';
import { degToRad } from '../../../src/units/angle.ts';
import { plainScene } from '../../light/plain-scene.ts';

/**
 * Declination (degrees) and equation of time (minutes) at 12 UT on the 15th of each month of 2026, from two independent
 * libraries (reference sun-and-light.md, section 1). The sun by spherical astronomy from these alone; through the day
 * the declination goes on as from the month before to the month after, which it matters where the sun's course grazes
 * an edge.
 */
const SUN_2026 = [
  [-21.07, -9.39],
  [-12.58, -14.07],
  [-2.02, -8.88],
  [9.87, -0.01],
  [18.94, 3.66],
  [23.32, -0.5],
  [21.47, -6.01],
  [13.95, -4.51],
  [2.91, 4.78],
  [-8.63, 14.22],
  [-18.56, 15.41],
  [-23.28, 4.88],
] as const;
/** What is left of the table's own coarseness: 0.02 degrees, and a quarter of a minute of the equation of time. */
const BY_THE_TABLE_MIN = 0.5;
/** Half a step of five minutes. */
const BY_THE_STEP_MIN = 2.5;

interface Place {
  readonly up: number;
  readonly east: number;
  readonly north: number;
}
/** Unit vector to the sun; the hour angle in minutes from noon. */
function sunAt(latDeg: number, declinationDeg: number, fromNoonMin: number): Place {
  const [lat, dec, hour] = [degToRad(latDeg), degToRad(declinationDeg), degToRad(fromNoonMin / 4)];
  return {
    up: Math.sin(lat) * Math.sin(dec) + Math.cos(lat) * Math.cos(dec) * Math.cos(hour),
    east: -Math.cos(dec) * Math.sin(hour),
    north: Math.cos(lat) * Math.sin(dec) - Math.sin(lat) * Math.cos(dec) * Math.cos(hour),
  };
}

/** First and last minute of the day (UTC at longitude 0) in which the sun is seen, looked for second by second. */
function expected(latDeg: number, month: number, seen: (sun: Place) => boolean): [number, number] | null {
  const [atNoon, equation] = SUN_2026[month];
  const noon = 720 - equation;
  // Two months are 59 to 62 days.
  const aDayDeg = (SUN_2026[(month + 1) % 12][0] - SUN_2026[(month + 11) % 12][0]) / 60.9;
  const shining = Array.from({ length: 8640 }, (_, i) => (i - 4320) / 6).filter((from) => {
    const sun = sunAt(latDeg, atNoon + (aDayDeg * (noon + from - 720)) / 1440, from);
    return sun.up > 0 && seen(sun);
  });
  return shining.length === 0 ? null : [noon + shining[0], noon + shining[shining.length - 1]];
}

const HERE = { columns: 1, rows: 1, cellM: 0.2, westM: -0.1, northM: 0.1 };
const day = (scene: LightScene): FirstLastSun =>
  runToEnd(computeFirstLastSun({ scene, grid: HERE, readingHeightM: 0 }));

function check(label: string, found: FirstLastSun, latDeg: number, seen: (sun: Place) => boolean): void {
  const errors: number[] = [];
  for (let month = 0; month < 12; month++) {
    const want = expected(latDeg, month, seen);
    if (want === null) {
      expect(found.firstMin[month]).toBeNaN();
      expect(found.sunHours[month]).toBe(0);
      continue;
    }
    errors.push(found.firstMin[month] - want[0], found.lastMin[month] - want[1]);
  }
  const worst = Math.max(...errors.map(Math.abs));
  const mean = errors.reduce((sum, error) => sum + Math.abs(error), 0) / errors.length;
  console.log(
    `${label}: ${errors.length} moments, off by ${mean.toFixed(2)} min in the mean, ${worst.toFixed(2)} at most`,
  );
  expect(errors.length).toBeGreaterThan(0);
  expect(worst).toBeLessThan(BY_THE_STEP_MIN + BY_THE_TABLE_MIN);
}

describe.each([60, 45, -43])('at latitude %d', (latDeg) => {
  test('open ground has the sun from rise to set', () => {
    const found = day(plainScene({ latDeg }));
    for (let month = 0; month < 12; month++) {
      const [first, last] = expected(latDeg, month, () => true)!;
      // No step matters here.
      expect(Math.abs(found.firstMin[month] - first)).toBeLessThan(BY_THE_TABLE_MIN);
      expect(Math.abs(found.lastMin[month] - last)).toBeLessThan(BY_THE_TABLE_MIN);
      expect(found.sunHours[month]).toBeCloseTo((found.lastMin[month] - found.firstMin[month]) / 60, 4);
    }
  });

  test('in a bowl of land it begins where the sun passes 30 degrees', () => {
    const found = day(plainScene({ latDeg, ground: bowl(30) }));
    check(`bowl at ${latDeg}`, found, latDeg, ({ up }) => up > Math.sin(degToRad(30)));
  });

  test('a long wall to the east keeps the morning, one to the west the evening', () => {
    for (const side of [1, -1]) {
      const found = day(wall(latDeg, side, 0));
      check(
        `wall to the ${side > 0 ? 'east' : 'west'} at ${latDeg}`,
        found,
        latDeg,
        ({ up, east }) => side * east <= 0 || up / (side * east) > 10 / 20,
      );
    }
  });

  test('a long wall to the side of the sun keeps the days of winter whole', () => {
    const side = latDeg > 0 ? -1 : 1;
    const found = day(wall(latDeg, 0, side));
    check(
      `wall towards the sun at ${latDeg}`,
      found,
      latDeg,
      ({ up, north }) => side * north <= 0 || up / (side * north) > 10 / 20,
    );
  });
});

/** A wall 10 m high whose face is 20 m from the origin, to one side, from end to end of the world. */
function wall(latDeg: number, towardsX: number, towardsY: number): LightScene {
  const [a, b] = [20, 21].map((away) => (towardsX + towardsY) * away).sort((x, y) => x - y);
  const ring = towardsX !== 0 ? [a, -1e5, b, -1e5, b, 1e5, a, 1e5] : [-1e5, a, 1e5, a, 1e5, b, -1e5, b];
  return plainScene({ latDeg, pieces: [{ ring, top: 10 }] });
}

/** A plain of 60 m about the origin, and around it land whose top stands at one angle as seen from there. */
function bowl(angleDeg: number): Grid {
  const edge = 201;
  const values = new Float32Array(edge * edge);
  for (let r = 0; r < edge; r++)
    for (let c = 0; c < edge; c++) {
      const away = Math.hypot((c - 100) * 2, (r - 100) * 2);
      values[r * edge + c] = away > 60 ? away * Math.tan(degToRad(angleDeg)) : 0;
    }
  return { columns: edge, rows: edge, cellM: 2, westM: -201, northM: 201, values };
}
