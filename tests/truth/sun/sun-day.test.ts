import { expect, test } from 'vitest';
import { sunDay } from '../../../src/sun/sun-day.ts';
import { degToRad } from '../../../src/units/angle.ts';

// Sunrise and sunset by the NREL algorithm as it publishes them and as they are used to check other libraries
// (reference sun-and-light.md, section 1): the upper rim through 0.5667 degrees of refraction, so the centre at -0.8333.
const RIM_ON_HORIZON = degToRad(-0.8333);
const PUBLISHED = [
  ['latitude -35, 1996-07-05', 'UTC', -35, 0, 1996, 6, 5, '07:08:15', '17:01:04'],
  ['latitude -35, 2004-12-04', 'UTC', -35, 0, 2004, 11, 4, '04:38:57', '19:02:03'],
  ['latitude 35, 1994-01-02', 'UTC', 35, 0, 1994, 0, 2, '07:08:12', '16:59:55'],
  ['Golden, 2015-01-02', 'America/Denver', 39.742476, -105.1786, 2015, 0, 2, '07:21:55', '16:47:43'],
] as const;

const minutes = (clock: string): number => {
  const [h, m, s] = clock.split(':').map(Number);
  return h * 60 + m + s / 60;
};

test.each(PUBLISHED)(
  'at %s the sun rises and sets as published',
  (_, zone, latDeg, lonDeg, year, month, day, rise, set) => {
    const found = sunDay(year, zone, latDeg, lonDeg, month, day, RIM_ON_HORIZON);
    const errors = [found.riseMin! - minutes(rise), found.setMin! - minutes(set)];
    console.log(`rise and set off by ${errors.map((error) => (error * 60).toFixed(1)).join(' and ')} s`);
    // The library keeps within 7 s of a full ephemeris (the same section).
    for (const error of errors) expect(Math.abs(error)).toBeLessThan(10 / 60);
  },
);

test('with the centre on an airless horizon the day is shorter by the time the sun takes for the rest', () => {
  // 0.8333 degrees at the rate of a sun near 35 S in July: 15 degrees an hour * cos(lat) * cos(dec) * sin(hour angle).
  const dec = degToRad(22.77);
  const lat = degToRad(-35);
  const hourAngle = Math.acos(-Math.tan(lat) * Math.tan(dec));
  const rateDegMin = (15 / 60) * Math.cos(lat) * Math.cos(dec) * Math.sin(hourAngle);
  const rim = sunDay(1996, 'UTC', -35, 0, 6, 5, RIM_ON_HORIZON);
  const centre = sunDay(1996, 'UTC', -35, 0, 6, 5);
  expect(centre.riseMin! - rim.riseMin!).toBeCloseTo(0.8333 / rateDegMin, 1);
  expect(rim.setMin! - centre.setMin!).toBeCloseTo(0.8333 / rateDegMin, 1);
});

test('where the sun does not rise there is no rise, where it does not set it is up all day', () => {
  expect(sunDay(2026, 'UTC', 75, 0, 11, 15)).toMatchObject({ riseMin: null, setMin: null });
  const { riseMin, setMin } = sunDay(2026, 'UTC', 75, 0, 5, 15);
  expect(setMin! - riseMin!).toBeCloseTo(1440, 6);
});

test('minutes are counted from midnight of the site’s own clocks', () => {
  // Halifax keeps UTC - 3 h in July.
  const { midnightMs, day } = sunDay(2026, 'America/Halifax', 45.1, -64.5, 6, 15);
  expect(new Date(midnightMs).toISOString()).toBe('2026-07-15T03:00:00.000Z');
  expect(day).toBe(195);
});
