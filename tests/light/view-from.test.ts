import { expect, test } from 'vitest';
import { computeLight } from '../../src/light/compute-light.ts';
import { computeLightCost } from '../../src/light/light-cost.ts';
import type { LightScene } from '../../src/light/light-types.ts';
import { STATED_YEAR_ERROR } from '../../src/light/stated-error.ts';
import { computeViewFrom } from '../../src/light/view-from.ts';
import { VIEW_PERIODS, VIEW_SEASON, type ViewFrom } from '../../src/light/view-from-types.ts';
import { cellCentreX, cellCentreY, sampleGrid } from '../../src/numeric/grid.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import { degToRad, radToDeg } from '../../src/units/angle.ts';
import { gridOf, marchedHorizon, rollingLand } from '../reference/plain-horizon.ts';
import { referenceCell } from '../reference/reference-light.ts';
import { plainYear } from '../reference/reference-sun.ts';
import { SCENE_SEEDS, seededScene } from '../reference/seeded-scene.ts';
import { type DrawnCrown, plainScene } from './plain-scene.ts';

const thingsOf = (scene: LightScene) => Math.max(0, ...scene.crowns.thing, ...scene.prisms.thing) + 1;
const look = (
  scene: LightScene,
  changes: Partial<{ xM: number; yM: number; month: number }> = {},
): ViewFrom =>
  runToEnd(
    computeViewFrom({
      scene,
      xM: 0,
      yM: 0,
      readingHeightM: 0.1,
      thingCount: thingsOf(scene),
      month: 6,
      ...changes,
    }),
  );
const year = (hours: Float32Array, first = 0) =>
  hours.subarray(first, first + 12).reduce((sum, value) => sum + value, 0);

/** A spot of the scene's grid where a cell has its centre, well away from solids. */
function spotOf(seed: number) {
  const request = seededScene(seed);
  const { grid } = request;
  const cell = (row: number, column: number) => ({
    xM: grid.westM + (column + 0.5) * grid.cellM,
    yM: grid.northM - (row + 0.5) * grid.cellM,
  });
  return { request, ...cell(Math.floor(grid.rows / 4), Math.floor(grid.columns / 2)) };
}

/** The same land in cells of half a metre: the reference feels for it every half cell, too far apart for an eye near it. */
function withFinerGround(scene: LightScene): LightScene {
  const { ground } = scene;
  const times = Math.round(ground.cellM / 0.5);
  const spec = {
    ...ground,
    columns: ground.columns * times,
    rows: ground.rows * times,
    cellM: ground.cellM / times,
  };
  const values = Float32Array.from({ length: spec.columns * spec.rows }, (_, i) =>
    sampleGrid(ground, cellCentreX(spec, i % spec.columns), cellCentreY(spec, Math.floor(i / spec.columns))),
  );
  return { ...scene, ground: { ...spec, values } };
}

test.each(SCENE_SEEDS.slice(0, 6))(
  'seeded scene %d: the hours got are those of every ten minutes and of the light map at that cell',
  (seed) => {
    const { request, xM, yM } = spotOf(seed);
    const { scene, readingHeightM, grid } = request;
    const view = runToEnd(
      computeViewFrom({ scene, xM, yM, readingHeightM, thingCount: thingsOf(scene), month: 6 }),
    );
    const plain = referenceCell(withFinerGround(scene), plainYear(scene), xM, yM, readingHeightM);
    const half = grid.cellM / 2;
    const cell = { columns: 1, rows: 1, cellM: grid.cellM, westM: xM - half, northM: yM + half };
    const map = runToEnd(computeLight({ scene, grid: cell, readingHeightM }));
    let offReference = 0;
    let offMap = 0;
    for (let month = 0; month < 12; month++) {
      const open = view.hours.open[month];
      const ofReference = view.hours.got[month] - plain.directHours[month];
      const ofMap = view.hours.got[month] - map.directHours[month];
      expect(Math.abs(ofReference) / open).toBeLessThan(0.01);
      expect(Math.abs(ofMap) / open).toBeLessThan(0.04);
      offReference += ofReference;
      offMap += ofMap;
    }
    const open = year(view.hours.open);
    console.log(
      `seed ${seed}: ${year(view.hours.got).toFixed(0)} h of ${open.toFixed(0)}; off the reference ${offReference.toFixed(1)} h, the map ${offMap.toFixed(1)} h`,
    );
    expect(Math.abs(offReference) / open).toBeLessThan(0.001);
    expect(Math.abs(offMap) / open).toBeLessThan(STATED_YEAR_ERROR.p99);
  },
  120_000,
);

// What the strides miss: the top of a crest between two of them, and the land nearer than the first.
test.each([2, 10, 30])(
  'the horizon of rolling land of %d m cells is that of the plain marcher',
  (cellM) => {
    const errors: number[] = [];
    for (const seed of [1, 2, 3]) {
      const ground = gridOf(200, 200, cellM, rollingLand(seed));
      const { landAltitudeDeg, stepDeg } = look(plainScene({ ground }), { xM: 3.3, yM: 1.7 });
      const zM = sampleGrid(ground, 3.3, 1.7) + 0.1;
      landAltitudeDeg.forEach((altitude, column) => {
        const azimuth = degToRad((column + 0.5) * stepDeg);
        const plain = radToDeg(Math.atan(marchedHorizon(ground, 3.3, 1.7, zM, azimuth, cellM / 80)));
        errors.push(Math.abs(altitude - plain));
      });
    }
    errors.sort((a, b) => a - b);
    const at = (share: number) => errors[Math.floor(share * errors.length)];
    console.log(`${cellM} m cells: half under ${at(0.5).toFixed(4)}°, 99 % under ${at(0.99).toFixed(3)}°`);
    expect(at(0.99)).toBeLessThan(0.05);
  },
  60_000,
);

const near: DrawnCrown = { x: 1, y: -8, base: 1, top: 8, radius: 3, depthOn: 0.5, thing: 0 };
const behind: DrawnCrown = { x: 5, y: -16, base: 1, top: 14, radius: 4, depthOn: 0.3, thing: 1 };
const belt = { ring: [-12, -6, -9, -6, -9, 8, -12, 8], base: 0, top: 9, depthOn: 0.3, thing: 2 };
const wall = { ring: [4, -3, 30, -3, 30, -2.7, 4, -2.7], base: -1, top: 3, thing: 3 };

test('what a thing takes is what comes back when it alone is gone', () => {
  const crowns = [near, behind];
  const all = look(plainScene({ crowns, pieces: [belt, wall] }));
  const without = [
    plainScene({ crowns: [behind], pieces: [belt, wall] }),
    plainScene({ crowns: [near], pieces: [belt, wall] }),
    plainScene({ crowns, pieces: [wall] }),
    plainScene({ crowns, pieces: [belt] }),
  ].map((scene) => look(scene));
  without.forEach((gone, thing) => {
    const back = year(gone.hours.got) - year(all.hours.got);
    expect(year(all.hours.toThings, thing * VIEW_PERIODS)).toBeCloseTo(back, 1);
    expect(all.hours.toThings[thing * VIEW_PERIODS + VIEW_SEASON]).toBeCloseTo(
      gone.hours.got[VIEW_SEASON] - all.hours.got[VIEW_SEASON],
      1,
    );
    expect(back).toBeGreaterThan(20);
  });
});

test('what a thing takes in the growing season is what the costs of the patches say of that spot', () => {
  const { request, xM, yM } = spotOf(2);
  const { scene, readingHeightM } = request;
  const thingCount = thingsOf(scene);
  const view = runToEnd(computeViewFrom({ scene, xM, yM, readingHeightM, thingCount, month: 6 }));
  const grid = { columns: 1, rows: 1, cellM: 0.02, westM: xM - 0.01, northM: yM + 0.01 };
  const cost = runToEnd(
    computeLightCost({ scene, grid, readingHeightM, thingCount, mask: Uint8Array.of(1) }),
  );
  const seasonDays = scene.growingDay.reduce((sum, day) => sum + day, 0);
  const open = view.hours.open[VIEW_SEASON];
  const off: number[] = [];
  for (let thing = 0; thing < thingCount; thing++)
    off.push(
      view.hours.toThings[thing * VIEW_PERIODS + VIEW_SEASON] - cost.directHoursADay[thing] * seasonDays,
    );
  console.log(`${thingCount} things: off by ${off.map((hours) => hours.toFixed(1)).join(', ')} h of ${open}`);
  for (const hours of off) expect(Math.abs(hours) / open).toBeLessThan(STATED_YEAR_ERROR.p99);
});

test('open hours are those got, those each thing and the land take, and those shared', () => {
  const { request, xM, yM } = spotOf(2);
  const { hours } = look(request.scene, { xM, yM });
  for (let period = 0; period < VIEW_PERIODS; period++) {
    let taken = hours.toLand[period] + hours.shared[period];
    for (let thing = 0; thing < thingsOf(request.scene); thing++)
      taken += hours.toThings[thing * VIEW_PERIODS + period];
    expect(hours.got[period] + taken).toBeCloseTo(hours.open[period], 2);
  }
  expect(year(hours.shared)).toBeGreaterThan(0);
});

test('two solid things in line share what they take', () => {
  const ring = (y: number) => [-1e4, y, 1e4, y, 1e4, y + 0.3, -1e4, y + 0.3];
  const pieces = [
    { ring: ring(-10), top: 6, thing: 0 },
    { ring: ring(-20), top: 12, thing: 1 },
  ];
  const both = look(plainScene({ pieces }));
  const one = look(plainScene({ pieces: pieces.slice(1) }));
  expect(both.hours.toThings[VIEW_SEASON]).toBeLessThan(0.1 * both.hours.shared[VIEW_SEASON]);
  expect(both.hours.got[VIEW_SEASON]).toBeCloseTo(one.hours.got[VIEW_SEASON], -1);
});

test('the picture has the leaves of its month, and the hours those of every day', () => {
  const tree = { ...near, depthOff: 0.1, leafClass: 1 };
  const scene = plainScene({ crowns: [tree] });
  const summer = look(scene);
  const winter = look(scene, { month: 0 });
  expect(winter.outlines[0].letsThrough).toBeGreaterThan(2 * summer.outlines[0].letsThrough);
  expect(winter.hours).toEqual(summer.hours);
  expect(winter.outlines[0].rings).toEqual(summer.outlines[0].rings);
});

test('under a crown it covers the zenith in every direction', () => {
  const [crown] = look(plainScene({ crowns: [{ ...near, x: 0.5, y: 0.5 }] })).outlines;
  expect(crown.topAltitudeDeg).toBeCloseTo(90, 3);
  expect(crown.nearestM).toBe(0);
  const azimuths = [...crown.rings[0]].filter((_, i) => i % 2 === 0);
  expect(Math.max(...azimuths) - Math.min(...azimuths)).toBeCloseTo(360, 1);
});

test('what stands behind a wall or a rise is not in sight', () => {
  const hidden = { ...behind, x: 0, y: -30, top: 6, thing: 0 };
  const screen = { ring: [-40, -10, 40, -10, 40, -9.7, -40, -9.7], top: 5, thing: 1 };
  expect(look(plainScene({ crowns: [hidden], pieces: [screen] })).outlines.map(({ thing }) => thing)).toEqual(
    [1],
  );
  const values = Float32Array.from({ length: 81 * 81 }, (_, i) => {
    const northM = (40 - Math.floor(i / 81)) * 1;
    return northM < -8 && northM > -14 ? 8 : 0;
  });
  const ground = { columns: 81, rows: 81, cellM: 1, westM: -40.5, northM: 40.5, values };
  const view = look(plainScene({ crowns: [hidden], ground }));
  expect(view.outlines).toEqual([]);
  expect(view.letThrough.every((share) => share === 1)).toBe(true);
  // In front of the rise it is.
  expect(look(plainScene({ crowns: [{ ...near, y: -5, radius: 2 }], ground })).outlines).toHaveLength(1);
});

test('what crosses due north is on both ends', () => {
  const inNorth = { ...near, x: 0, y: 12 };
  for (const latDeg of [45, -40])
    expect(look(plainScene({ latDeg, crowns: [inNorth] })).outlines[0].rings).toHaveLength(2);
});

test('azimuths are true: the grid turned under the same world changes nothing but them', () => {
  const turn = 0.04;
  const plain = look(plainScene({ crowns: [near, behind] })).outlines;
  const turned = look(plainScene({ crowns: [near, behind], convergenceRad: turn })).outlines;
  expect(turned[0].topAzimuthDeg - plain[0].topAzimuthDeg).toBeCloseTo((turn * 180) / Math.PI, 1);
});

test('a spot in a building or off the known ground is refused in a sentence', () => {
  const house = { ring: [-4, -4, 4, -4, 4, 4, -4, 4], base: -50, top: 5 };
  expect(() => look(plainScene({ pieces: [house] }))).toThrow(/building or a wall stands on this spot/);
  const ground = { ...plainScene().ground, values: new Float32Array(4).fill(Number.NaN) };
  expect(() => look(plainScene({ ground }))).toThrow(/not known at this spot/);
  expect(() => look(plainScene(), { xM: 1e5 })).toThrow(/not known at this spot/);
});
