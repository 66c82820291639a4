import { expect, test } from 'vitest';
import { type CanopyField, canopyPathM, computeCanopyField } from '../../src/light/canopy-field.ts';
import { type Grid, sampleGrid } from '../../src/numeric/grid.ts';
import { seededRandom } from '../../src/numeric/random.ts';
import { gridOf, marchedCanopyM, rollingLand } from '../reference/plain-horizon.ts';

const RAD = Math.PI / 180;
const LEVEL = gridOf(40, 40, 30, () => 12);

function fieldOf(canopy: Grid, ground: Grid): CanopyField {
  const surroundings = { canopy, depthOnPerM: 0.25, depthOffPerM: 0.0875, leafClass: 1 };
  const field = computeCanopyField(surroundings, ground);
  if (!field) throw new Error('no foliage');
  return field;
}
const lookAt = (field: CanopyField, x: number, y: number, z: number, azimuthDeg: number, altDeg: number) =>
  canopyPathM(field, x, y, z, Math.sin(azimuthDeg * RAD), Math.cos(azimuthDeg * RAD), Math.tan(altDeg * RAD));

test('without foliage, or where the ground under all of it is missing, there is no field', () => {
  const surroundings = { canopy: gridOf(30, 30, 2, () => 0), depthOnPerM: 1, depthOffPerM: 1, leafClass: 0 };
  expect(computeCanopyField(surroundings, LEVEL)).toBeNull();
  const bare = { ...surroundings, canopy: gridOf(30, 30, 2, () => Number.NaN) };
  expect(computeCanopyField(bare, LEVEL)).toBeNull();
  const wood = { ...surroundings, canopy: gridOf(30, 30, 2, () => 8) };
  expect(
    computeCanopyField(
      wood,
      gridOf(40, 40, 30, () => Number.NaN),
    ),
  ).toBeNull();
});

test.each([3, 15, 30, 45, 60, 89])(
  'under an even wood a ray of %d degrees passes (top - reading) / sin(altitude)',
  (altDeg) => {
    const field = fieldOf(
      gridOf(601, 433, 2, () => 9),
      LEVEL,
    );
    for (let azimuthDeg = 0; azimuthDeg < 360; azimuthDeg += 7.5) {
      const path = lookAt(field, 1.3, -2.7, 12.6, azimuthDeg, altDeg);
      expect(path).toBeCloseTo(Math.min(field.longestM, 8.4 / Math.sin(altDeg * RAD)), 6);
    }
  },
);

test('a box of foliage takes the chord of the ray through the box', () => {
  const [west, east, south, north, top] = [20, 34, -8, 40, 27];
  const canopy = gridOf(100, 100, 2, (x, y) => (x > west && x < east && y > south && y < north ? 15 : 0));
  const field = fieldOf(canopy, LEVEL);
  const random = seededRandom(1);
  let met = 0;
  for (let k = 0; k < 3000; k++) {
    const [x, y, z] = [random() * 120 - 60, random() * 120 - 60, 12 + random() * 3];
    const azimuthDeg = k % 5 === 0 ? 45 * Math.floor(8 * random()) : 360 * random();
    const altDeg = 1 + 60 * random();
    const u = [
      Math.sin(azimuthDeg * RAD) * Math.cos(altDeg * RAD),
      Math.cos(azimuthDeg * RAD) * Math.cos(altDeg * RAD),
      Math.sin(altDeg * RAD),
    ];
    let [from, to] = [0, Number.POSITIVE_INFINITY];
    const sides = [
      [west - x, east - x],
      [south - y, north - y],
      [12 - z, top - z],
    ];
    sides.forEach(([low, high], axis) => {
      const [a, b] = [low / u[axis], high / u[axis]];
      from = Math.max(from, Math.min(a, b));
      to = Math.min(to, Math.max(a, b));
    });
    const expected = Math.max(0, to - from);
    if (expected > 0) met++;
    expect(Math.abs(lookAt(field, x, y, z, azimuthDeg, altDeg) - expected)).toBeLessThan(1e-5);
  }
  expect(met).toBeGreaterThan(300);
});

/** Ragged woods in lumps, with lone trees between. */
function raggedWood(seed: number, columns: number, rows: number, cellM: number): Grid {
  const random = seededRandom(seed);
  return gridOf(columns, rows, cellM, (x, y) => {
    const lump = Math.sin(x / 37 + seed) + Math.cos(y / 29) + Math.sin((x - y) / 51);
    if (lump > 0.6) return 8 + 14 * random();
    return random() < 0.02 ? 3 + 9 * random() : 0;
  });
}

test('on rolling land it agrees with a plain marcher, from inside the wood and out', () => {
  const errors: number[] = [];
  let met = 0;
  for (let seed = 1; seed <= 6; seed++) {
    const ground = gridOf(170, 150, 4, rollingLand(seed));
    const canopy = raggedWood(seed, 257 + seed, 201 + 3 * seed, [2, 1.5, 3][seed % 3]);
    const field = fieldOf(canopy, ground);
    const random = seededRandom(seed + 20);
    for (let k = 0; k < 60; k++) {
      const x = 160 * (random() - 0.5);
      const y = 160 * (random() - 0.5);
      const z = sampleGrid(ground, x, y) + (k % 2 === 0 ? 0.1 : 1);
      const azimuthDeg = k % 6 === 0 ? 45 * Math.floor(8 * random()) : 360 * random();
      const altDeg = 2 + 50 * random() ** 2;
      const path = lookAt(field, x, y, z, azimuthDeg, altDeg);
      const walked = marchedCanopyM(canopy, ground, x, y, z, azimuthDeg * RAD, Math.tan(altDeg * RAD));
      if (walked > 0) met++;
      errors.push(Math.abs(path - Math.min(field.longestM, walked)));
    }
  }
  errors.sort((a, b) => a - b);
  console.log(
    `paths through foliage against the marcher, m: p50 ${errors[180].toFixed(4)}, most ${errors[359].toFixed(3)}; ${met} of 360 met some`,
  );
  expect(met).toBeGreaterThan(120);
  // The marcher's step is 5 cm: half a step at each edge it crosses, some dozen in a ragged wood.
  expect(errors[359]).toBeLessThan(0.3);
});

test('a ray from outside the raster meets what stands in it; one that never comes over it meets nothing', () => {
  const field = fieldOf(
    gridOf(20, 20, 2, () => 10),
    LEVEL,
  );
  expect(lookAt(field, -120, 0, 12, 90, 1)).toBeCloseTo(40 / Math.cos(RAD), 6);
  expect(lookAt(field, -120, 0, 12, 270, 1)).toBe(0);
  expect(lookAt(field, -120, 30, 12, 90, 1)).toBe(0);
  expect(lookAt(field, -120, 0, 12, 90, 10)).toBe(0);
});

test('turned by a quarter, and mirrored, woods take the same', () => {
  const tops = (x: number, y: number) =>
    Math.sin(x / 17) + Math.cos(y / 11) > 0.5 ? 6 + 5 * Math.cos(x / 9 + y / 7) : 0;
  const asIs = fieldOf(gridOf(90, 90, 2, tops), LEVEL);
  const turned = fieldOf(
    gridOf(90, 90, 2, (x, y) => tops(-y, x)),
    LEVEL,
  );
  const mirrored = fieldOf(
    gridOf(90, 90, 2, (x, y) => tops(-x, y)),
    LEVEL,
  );
  const random = seededRandom(3);
  for (let k = 0; k < 400; k++) {
    const [x, y, azimuthDeg, altDeg] = [
      40 * random() - 20,
      40 * random() - 20,
      360 * random(),
      3 + 40 * random(),
    ];
    const path = lookAt(asIs, x, y, 12.1, azimuthDeg, altDeg);
    // What lay to the north lies to the east.
    expect(lookAt(turned, y, -x, 12.1, azimuthDeg + 90, altDeg)).toBeCloseTo(path, 5);
    expect(lookAt(mirrored, -x, y, 12.1, -azimuthDeg, altDeg)).toBeCloseTo(path, 5);
  }
});

test('a wood far off is seen over open ground between, whatever block of the pyramid it lies in', () => {
  for (let column = 0; column < 150; column++) {
    const canopy = gridOf(150, 3, 2, () => 0);
    canopy.values[150 + column] = 20;
    const field = fieldOf(canopy, LEVEL);
    for (const [fromM, azimuthDeg] of [
      [-200, 90],
      [200, 270],
    ]) {
      const path = lookAt(field, fromM, 0, 12.1, azimuthDeg, 2);
      expect(path).toBeCloseTo(2 / Math.cos(2 * RAD), 5);
    }
  }
});
