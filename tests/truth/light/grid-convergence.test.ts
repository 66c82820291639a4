import { expect, test } from 'vitest';
import { computeLight } from '../../../src/light/compute-light.ts';
import { runToEnd } from '../../../src/numeric/steps.ts';
import { degToRad } from '../../../src/units/angle.ts';
import { plainScene, yearOf } from '../../light/plain-scene.ts';

// Near the edge of a UTM zone at 60 N (2.99 degrees from its meridian) grid north stands atan(tan(2.99) sin(60)) =
// 2.59 degrees clockwise of true north. By symmetry of the sun's year, both sides of a wall on the true meridian get
// the same hours, but for what the equation of time leaves between mornings and afternoons.
const LAT_DEG = 60;
const CONVERGENCE_RAD = Math.atan(Math.tan(degToRad(2.99)) * Math.sin(degToRad(LAT_DEG)));

/** Hours a year 1 m east and 1 m west of a wall 20 m high and 400 m long on the true meridian. */
function bothSides(convergenceGivenRad: number): { east: number; west: number } {
  const half = 0.15;
  // True north as the grid sees it: the convergence anticlockwise of the grid's own.
  const nx = -Math.sin(CONVERGENCE_RAD);
  const ny = Math.cos(CONVERGENCE_RAD);
  const at = (along: number, across: number) => [along * nx + across * ny, along * ny - across * nx];
  const scene = plainScene({
    latDeg: LAT_DEG,
    lonDeg: 5.99,
    convergenceRad: convergenceGivenRad,
    pieces: [
      {
        ring: [...at(-200, -half), ...at(-200, half), ...at(200, half), ...at(200, -half)],
        base: -1,
        top: 20,
      },
    ],
  });
  const hoursAt = (across: number) => {
    const [x, y] = at(0, across);
    const grid = { columns: 1, rows: 1, cellM: 0.01, westM: x - 0.005, northM: y + 0.005 };
    return yearOf(runToEnd(computeLight({ scene, grid, readingHeightM: 0.1 })).directHours, 0);
  };
  return { east: hoursAt(1 + half), west: hoursAt(-1 - half) };
}

test('a wall on the true meridian leaves as much sun on its east side as on its west', () => {
  const { east, west } = bothSides(CONVERGENCE_RAD);
  console.log(`east ${east.toFixed(1)} h, west ${west.toFixed(1)} h`);
  expect(Math.abs(east - west)).toBeLessThan(45);
});

test('taking grid north for true north would make a hundred hours between them', () => {
  const { east, west } = bothSides(0);
  console.log(`without convergence: east ${east.toFixed(1)} h, west ${west.toFixed(1)} h`);
  expect(Math.abs(east - west)).toBeGreaterThan(100);
});
