import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { clockReader } from '../../src/sun/site-clock.ts';
import { type SunPath, sunPaths } from '../../src/sun/sun-paths.ts';

const pathOf = (paths: readonly SunPath[], which: SunPath['which']): SunPath =>
  paths.find((path) => path.which === which)!;

/** Rows of the table of independent ephemerides (fixtures/README.md) at a full hour of a solstice or an equinox. */
const ROWS = readFileSync(new URL('../truth/sun/fixtures/sun-positions.csv', import.meta.url), 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => line.split(','))
  .filter(([utc]) => /-(03-2[01]|06-2[01]|09-2[23]|12-2[12])T\d\d:00:00Z/.test(utc));

test('the table has full hours of solstices and equinoxes to look at', () => {
  expect(ROWS.length).toBeGreaterThanOrEqual(3);
});

test.each(ROWS)('at %s, %s N, %s E the hour on the path is where the table has the sun', (...row) => {
  const [utc, lat, lon, altitude, azimuth] = row;
  const at = new Date(utc);
  const month = at.getUTCMonth();
  const which = { 2: 'march-equinox', 5: 'june-solstice', 8: 'september-equinox', 11: 'december-solstice' }[
    month
  ] as SunPath['which'];
  const path = pathOf(sunPaths(at.getUTCFullYear(), 'UTC', Number(lat), Number(lon), month), which);
  // The equinox's civil day may be the one beside the row's: half a degree of declination at the most.
  const sameDay = path.dayOfMonth === at.getUTCDate();
  const hour = path.hours.find(({ clockHour }) => clockHour === at.getUTCHours())!;
  expect(Math.abs(hour.altitudeDeg - Number(altitude))).toBeLessThan(sameDay ? 0.02 : 0.5);
  expect(Math.abs(hour.azimuthDeg - Number(azimuth))).toBeLessThan(sameDay ? 0.02 : 0.7);
});

test('the hours are those of the site’s clocks, daylight saving and all', () => {
  const paths = sunPaths(2026, 'America/Halifax', 45.1, -64.5, 0);
  const june = pathOf(paths, 'june-solstice');
  const december = pathOf(paths, 'december-solstice');
  expect([june.dayOfMonth, june.clock, june.daylightSaving]).toEqual([21, 'Atlantic Daylight Time', true]);
  expect([december.dayOfMonth, december.clock, december.daylightSaving]).toEqual([
    21,
    'Atlantic Standard Time',
    false,
  ]);
  // The sun stands highest near 13:20 by the summer's clock, near 12:16 by the winter's.
  const highest = ({ hours }: SunPath) =>
    hours.reduce((best, hour) => (hour.altitudeDeg > best.altitudeDeg ? hour : best)).clockHour;
  expect(highest(june)).toBe(13);
  expect(highest(december)).toBe(12);
  expect(pathOf(paths, 'month')).toMatchObject({ month: 0, dayOfMonth: 15 });
});

test('a clock that is half an hour off has its own full hours', () => {
  const [june] = sunPaths(2026, 'Australia/Adelaide', -34.9, 138.6, 5);
  const clock = clockReader('Australia/Adelaide', 2026);
  expect(clock.timeAt(Date.UTC(2026, 5, 21, 2, 30))).toEqual({ hour: 12, minute: 0 });
  expect(june.hours.map(({ clockHour }) => clockHour)).toEqual([8, 9, 10, 11, 12, 13, 14, 15, 16, 17]);
});

test('each path begins and ends on the horizon', () => {
  for (const { points } of sunPaths(2026, 'Europe/Oslo', 59.8, 10.7, 6)) {
    expect(points[1]).toBe(0);
    expect(points.at(-1)).toBe(0);
  }
});
