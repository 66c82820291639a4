import { expect, test } from 'vitest';
import { computeLight } from '../../src/light/compute-light.ts';
import type { LightRequest, LightResult } from '../../src/light/light-types.ts';
import type { Grid } from '../../src/numeric/grid.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import { seededScene } from '../reference/seeded-scene.ts';
import { plainScene, yearOf } from './plain-scene.ts';

const light = (request: LightRequest): LightResult => runToEnd(computeLight(request));
const field = { columns: 10, rows: 8, cellM: 1, westM: -5, northM: 4 };

test('an empty field keeps exactly all its light', () => {
  const result = light({ scene: plainScene(), grid: field, readingHeightM: 0.1 });
  for (const share of result.lightShare) expect(share).toBe(1);
  expect(result.directHours).toEqual(result.openHours);
  expect(result.dailyLightIntegral[3 * 80 + 7]).toBe(result.openDailyLightIntegral[3]);
});

test('a tree beyond the reach of its shadow and sky takes next to nothing', () => {
  const scene = plainScene({
    crowns: [{ x: 0, y: 500, base: 1, top: 6, radius: 2, depthOn: 0.4 }],
  });
  const result = light({ scene, grid: field, readingHeightM: 0.1 });
  for (const share of result.lightShare) expect(share).toBeGreaterThan(0.9999);
});

test('a field computed by rows in turn is the same as the whole', () => {
  const request = seededScene(4, 6);
  const whole = light(request);
  const { columns } = request.grid;
  const cells = columns * request.grid.rows;
  for (const first of [0, 1, 2]) {
    const part = light({ ...request, rows: { first, step: 3 } });
    const partCells = part.openHours.length / 12;
    for (let band = 0; band < 13; band++)
      for (let i = 0; i < partCells; i++) {
        const cell = (first + 3 * Math.floor(i / columns)) * columns + (i % columns);
        expect(part.lightShare[band * partCells + i]).toBe(whole.lightShare[band * cells + cell]);
      }
  }
});

test('there is no light value inside a building, and one beside it and on a wall', () => {
  const scene = plainScene({
    pieces: [
      { ring: [-3, -2, 0, -2, 0, 1, -3, 1], base: -1, top: 4 },
      { ring: [2.4, -3, 2.6, -3, 2.6, 3, 2.4, 3], base: -1, top: 2 },
    ],
  });
  const result = light({ scene, grid: field, readingHeightM: 0.1 });
  const at = (x: number, y: number) => Math.floor(4 - y) * 10 + Math.floor(x + 5);
  expect(result.lightShare[at(-1.5, 0.5)]).toBeNaN();
  expect(result.directHours[at(-1.5, 0.5)]).toBeNaN();
  expect(result.lightShare[at(0.5, 0.5)]).toBeGreaterThan(0.1);
  expect(result.lightShare[at(2.5, 0.5)]).not.toBeNaN();
});

test('where the ground is missing there is no light value', () => {
  const ground: Grid = { columns: 4, rows: 4, cellM: 4, westM: -8, northM: 8, values: new Float32Array(16) };
  ground.values[0] = Number.NaN;
  const result = light({ scene: plainScene({ ground }), grid: field, readingHeightM: 0.1 });
  expect(result.lightShare[0]).toBeNaN();
  expect(result.lightShare[79]).toBe(1);
});

test('a slope given as a plane of few huge cells hides the low sun behind itself', () => {
  // Climbs 1 in 2 to the south: the winter sun at 45 N never clears 26.6 degrees.
  const ground: Grid = {
    columns: 3,
    rows: 3,
    cellM: 4000,
    westM: -6000,
    northM: 6000,
    values: new Float32Array(9),
  };
  for (let r = 0; r < 3; r++) for (let c = 0; c < 3; c++) ground.values[r * 3 + c] = (r - 1) * 2000;
  const result = light({ scene: plainScene({ ground }), grid: field, readingHeightM: 0.1 });
  // Rounding of the sums, of the size of 1e-7 of the month's hours, is what may be left.
  expect(result.openHours[11 * 80]).toBeLessThan(1e-4);
  expect(result.openHours[5 * 80]).toBeGreaterThan(350);
  // An even sky over a plane tilted by atan(1/2): what is above both horizons of a level plane, (1 + cos) / 2.
  const dull = plainScene({
    ground,
    sky: { sunshineShareByMonth: new Float32Array(12), hourly: null, diffuseSky: 'isotropic' },
  });
  const share = light({ scene: dull, grid: field, readingHeightM: 0.1 }).lightShare[0];
  expect(Math.abs(share - (1 + Math.cos(Math.atan(0.5))) / 2)).toBeLessThan(0.005);
});

test('a tree lets more through when its leaves are off', () => {
  const crown = { x: 0, y: -4, base: 0.2, top: 9, radius: 4, depthOn: 0.5 };
  const grid = { columns: 1, rows: 1, cellM: 0.5, westM: -0.25, northM: 0.25 };
  const run = (changes: object) =>
    light({ scene: plainScene({ crowns: [{ ...crown, ...changes }] }), grid, readingHeightM: 0.1 });
  const evergreen = run({});
  const deciduous = run({ depthOff: 0.1, leafClass: 1 });
  // Class 1 is in leaf from May to October.
  expect(deciduous.directHours[6]).toBeCloseTo(evergreen.directHours[6], 4);
  expect(deciduous.directHours[0]).toBeGreaterThan(evergreen.directHours[0] * 1.2);
  expect(deciduous.lightShare[0]).toBeGreaterThan(evergreen.lightShare[0]);
});

test('light south of the equator comes from the north', () => {
  const run = (latDeg: number, y: number) => {
    const scene = plainScene({ latDeg, pieces: [{ ring: [-9, y, 9, y, 9, y + 1, -9, y + 1], top: 5 }] });
    const grid = { columns: 1, rows: 1, cellM: 0.5, westM: -0.25, northM: 0.25 };
    return yearOf(light({ scene, grid, readingHeightM: 0.1 }).directHours, 0);
  };
  expect(run(-43, 3)).toBeLessThan(0.8 * run(-43, -4));
  expect(run(43, -4)).toBeLessThan(0.8 * run(43, 3));
});

test('a leaf calendar of the wrong length is refused', () => {
  const scene = plainScene({ growingDay: new Uint8Array(300) });
  expect(() => light({ scene, grid: field, readingHeightM: 0.1 })).toThrow(/365 days/);
});
