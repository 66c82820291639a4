import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { heightByShadow } from '../../../src/state/measure-tree.ts';
import { degToRad } from '../../../src/units/angle.ts';

const HEIGHT_M = 8;
/** Sun's altitude from three independent ephemerides; see tests/truth/sun/fixtures/README.md. */
const rows = readFileSync(new URL('../sun/fixtures/sun-positions.csv', import.meta.url), 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => line.split(','));
/** What the sun may be off by: the tolerance of the sun's own truth test. */
const SUN_DEG = 0.02;

test('the shadow of 8 m at a known time and place gives 8 m, by every row of the independent sun table', () => {
  const misses: number[] = [];
  for (const [utc, lat, lon, altitudeDeg] of rows) {
    if (Number(altitudeDeg) < 5) continue;
    const altitude = degToRad(Number(altitudeDeg));
    const { heightM } = heightByShadow({
      shadowM: HEIGHT_M / Math.tan(altitude),
      date: utc.slice(0, 10),
      time: utc.slice(11, 16),
      timeZone: 'UTC',
      lonLat: [Number(lon), Number(lat)],
      riseDeg: 0,
    });
    // d(tan a) / tan a = da / (sin a cos a).
    const allowedM = (HEIGHT_M * degToRad(SUN_DEG)) / (Math.sin(altitude) * Math.cos(altitude));
    // Times of the table that fall between two minutes cannot be typed.
    if (!utc.endsWith(':00Z')) continue;
    expect(Math.abs(heightM - HEIGHT_M), utc).toBeLessThan(allowedM);
    misses.push(Math.abs(heightM - HEIGHT_M));
  }
  expect(misses.length).toBeGreaterThan(20);
  console.log(
    `height by shadow: ${misses.length} rows of the sun table, worst ${(1000 * Math.max(...misses)).toFixed(1)} mm of 8 m`,
  );
});
