import { expect, test } from 'vitest';
import { SKY_DIRECTION_COUNT, skyDirections } from '../../../src/sun/sky-directions.ts';
import { degToRad } from '../../../src/units/angle.ts';

const isotropic = skyDirections('isotropic');
const overcast = skyDirections('cie-overcast');

function shareWhere(dome: typeof isotropic, open: (altitude: number, azimuth: number) => boolean): number {
  let share = 0;
  for (let k = 0; k < dome.count; k++)
    if (open(dome.altitudeRad[k], dome.azimuthRad[k])) share += dome.share[k];
  return share;
}
const inRing = (deg: number) => (altitude: number) => altitude >= degToRad(deg);
const behindWall = (deg: number, wallAzimuthDeg: number) => (altitude: number, azimuth: number) => {
  const ahead = Math.cos(azimuth - degToRad(wallAzimuthDeg));
  return ahead <= 0 || Math.atan(Math.tan(altitude) / ahead) >= degToRad(deg);
};

test('the shares of the sky add up to one', () => {
  expect(isotropic.count).toBe(SKY_DIRECTION_COUNT);
  expect(shareWhere(isotropic, () => true)).toBeCloseTo(1, 12);
  expect(shareWhere(overcast, () => true)).toBeCloseTo(1, 12);
});

test('rings of any height leave cos2 of an even sky, within 0.005 (Dozier & Frew 1990, level ground)', () => {
  for (let deg = 0; deg < 90; deg += 0.5)
    expect(Math.abs(shareWhere(isotropic, inRing(deg)) - Math.cos(degToRad(deg)) ** 2)).toBeLessThan(0.005);
});

test('a long wall of any height and course leaves (1 + cos) / 2 of an even sky, within 0.005', () => {
  let worst = 0;
  for (let deg = 5; deg <= 90; deg += 5)
    for (let azimuth = 0; azimuth < 360; azimuth += 5)
      worst = Math.max(
        worst,
        Math.abs(shareWhere(isotropic, behindWall(deg, azimuth)) - (1 + Math.cos(degToRad(deg))) / 2),
      );
  console.log(`sky view of walls: worst error ${worst.toFixed(4)}`);
  expect(worst).toBeLessThan(0.005);
});

test('an overcast sky leaves what the CIE formula gives in rings and behind walls, within 0.005', () => {
  // Values of the standard overcast sky (Moon & Spencer), integrated for this project.
  for (const [deg, ring, wall] of [
    [30, 0.82143, 0.95481],
    [45, 0.58368, 0.88533],
  ]) {
    expect(Math.abs(shareWhere(overcast, inRing(deg)) - ring)).toBeLessThan(0.005);
    for (let azimuth = 0; azimuth < 360; azimuth += 5)
      expect(Math.abs(shareWhere(overcast, behindWall(deg, azimuth)) - wall)).toBeLessThan(0.005);
  }
});

test('rows of the sky carry the light of the published subdivision (Tregenza 1987), within 0.003', () => {
  // Percentages of even and overcast light from each 12-degree row of altitude.
  const even = [4.323, 12.221, 18.006, 20.677, 19.774, 15.451, 8.457];
  const dull = [2.366, 8.569, 15.476, 20.71, 22.138, 18.663, 10.677];
  even.forEach((percent, row) => {
    const within = (altitude: number) => altitude >= degToRad(12 * row) && altitude < degToRad(12 * row + 12);
    expect(Math.abs(shareWhere(isotropic, within) - percent / 100)).toBeLessThan(0.003);
    expect(Math.abs(shareWhere(overcast, within) - dull[row] / 100)).toBeLessThan(0.003);
  });
});
