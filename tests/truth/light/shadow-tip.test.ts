import { describe, expect, test } from 'vitest';
import type { CrownForm } from '../../../src/crowns/crown-set.ts';
import { crownPathM } from '../../../src/crowns/path-length.ts';
import {
  awayFromSun,
  type CrownCaster,
  type ShadowSun,
  SUN_RADIUS_RAD,
  shadowTip,
} from '../../../src/light/shadow-tip.ts';
import { type Grid, sampleGrid } from '../../../src/numeric/grid.ts';
import { seededRandom } from '../../../src/numeric/random.ts';
import { apparentAltitudeRad } from '../../../src/sun/position.ts';
import { degToRad, type GridAzimuthRad, radToDeg } from '../../../src/units/angle.ts';

/** Ground of 5 m cells, 400 m to each side of the origin, from a function of x and y. */
function groundOf(elevationM: (xM: number, yM: number) => number): Grid {
  const spec = { columns: 160, rows: 160, cellM: 5, westM: -400, northM: 400 };
  const values = Float32Array.from({ length: spec.columns * spec.rows }, (_, i) =>
    elevationM(
      spec.westM + ((i % spec.columns) + 0.5) * spec.cellM,
      spec.northM - (Math.floor(i / spec.columns) + 0.5) * spec.cellM,
    ),
  );
  return { ...spec, values };
}
const LEVEL = groundOf(() => 0);
const sunAt = (altitudeDeg: number, azimuthDeg: number): ShadowSun => ({
  altitudeRad: degToRad(altitudeDeg),
  azimuthRad: degToRad(azimuthDeg) as GridAzimuthRad,
});
const optionsOn = (ground: Grid) => ({ ground, localPerM: 1, longestM: 350 });
const pole = (heightM: number, groundM = 0) => ({
  casts: 'points' as const,
  points: [{ xM: 0, yM: 0, zM: groundM + heightM }],
});
const crown = (form: CrownForm, baseM: number, topM: number, radiusM: number): CrownCaster => ({
  casts: 'crown',
  form,
  xM: 0,
  yM: 0,
  groundM: 0,
  baseM,
  topM,
  radiusM,
});

describe('a shadow on level ground', () => {
  // Computed reference table: shadow of 10 m by the altitude at which the sun is seen (sun and light, terrain).
  test.each([
    [5, 114.3],
    [10, 56.71],
    [20, 27.47],
    [30, 17.32],
    [45, 10.0],
    [60, 5.77],
  ])('of 10 m at %d degrees is %d m long', (altitudeDeg, lengthM) => {
    const tip = shadowTip(pole(10), sunAt(altitudeDeg, 200), optionsOn(LEVEL));
    expect(Math.abs((tip?.lengthM ?? 0) - lengthM)).toBeLessThan(0.0051);
  });

  test('refraction shortens the shadow at 10 degrees by about 0.9 %, as the reference has it', () => {
    const airless = shadowTip(pole(10), sunAt(10, 180), optionsOn(LEVEL));
    const seen = shadowTip(
      pole(10),
      sunAt(radToDeg(apparentAltitudeRad(degToRad(10))), 180),
      optionsOn(LEVEL),
    );
    const share = 1 - (seen?.lengthM ?? 0) / (airless?.lengthM ?? 1);
    expect(share).toBeGreaterThan(0.0085);
    expect(share).toBeLessThan(0.0095);
  });

  test('lies opposite to the sun', () => {
    const tip = shadowTip(pole(10), sunAt(45, 60), optionsOn(LEVEL));
    expect(tip?.at.xM).toBeCloseTo(-10 * Math.sin(degToRad(60)), 3);
    expect(tip?.at.yM).toBeCloseTo(-10 * Math.cos(degToRad(60)), 3);
  });

  test('is blurred by the disc of the sun: from its upper to its lower limb', () => {
    // Level ground: height times the difference of the cotangents at the limbs is the whole width.
    const altitude = degToRad(25);
    const wholeM = 10 / Math.tan(altitude - SUN_RADIUS_RAD) - 10 / Math.tan(altitude + SUN_RADIUS_RAD);
    expect(shadowTip(pole(10), sunAt(25, 100), optionsOn(LEVEL))?.fuzzyM).toBeCloseTo(wholeM / 2, 3);
  });

  test('has no tip when the sun is down', () => {
    expect(shadowTip(pole(10), sunAt(-0.1, 100), optionsOn(LEVEL))).toBeNull();
  });
});

describe('a shadow on a slope, by hand', () => {
  // Ground falls toward the east by 1 in 8; a pole of 6 m; sun in the west at 30 degrees. The shadow runs downhill:
  // 6 = L (tan 30 - 1/8). With the sun in the east it runs uphill: 6 = L (tan 30 + 1/8). Across the slope: 6 / tan 30.
  const slope = groundOf((x) => -x / 8);
  const tan30 = Math.tan(Math.PI / 6);
  test.each([
    ['downhill', 270, 6 / (tan30 - 1 / 8)],
    ['uphill', 90, 6 / (tan30 + 1 / 8)],
    ['across', 180, 6 / tan30],
  ])('%s', (_, azimuthDeg, lengthM) => {
    expect(shadowTip(pole(6), sunAt(30, azimuthDeg), optionsOn(slope))?.lengthM).toBeCloseTo(lengthM, 3);
  });

  test('onto a bank: the shadow climbs it', () => {
    // Level to x = 7.5 m, then rising 1 in 2 (between the cell centres at 7.5 and beyond). The ray of a pole of 10 m at
    // 45 degrees stands 10 - x above the foot; it meets the bank where 10 - x = (x - 7.5) / 2, so at x = 55/6.
    const bank = groundOf((x) => Math.max(0, (x - 7.5) / 2));
    const tip = shadowTip(pole(10), sunAt(45, 270), optionsOn(bank));
    expect(tip?.lengthM).toBeCloseTo(55 / 6, 3);
    expect(tip?.at.zM).toBeCloseTo((55 / 6 - 7.5) / 2, 3);
  });
});

/** Level distance from the stem at which the ray to the sun just leaves the crown for good: by bisection on the path. */
function edgeByRays(caster: CrownCaster, sun: ShadowSun, ground: Grid): number {
  const [ex, ey] = awayFromSun(sun);
  const level = Math.cos(sun.altitudeRad);
  const meets = (s: number): boolean => {
    const [x, y] = [ex * s, ey * s];
    const path = crownPathM(
      caster.form,
      x,
      y,
      sampleGrid(ground, x, y),
      -ex * level,
      -ey * level,
      Math.sin(sun.altitudeRad),
      caster.baseM,
      caster.topM,
      caster.radiusM,
    );
    return path > 0;
  };
  let inside = 300;
  while (inside > 0 && !meets(inside)) inside -= 0.01;
  let outside = inside + 0.01;
  while (outside - inside > 1e-5) {
    const middle = (inside + outside) / 2;
    if (meets(middle)) inside = middle;
    else outside = middle;
  }
  return inside;
}

describe('the tip of a crown is where the last ray through it meets the ground', () => {
  const slope = groundOf((x, y) => 0.11 * x - 0.06 * y);
  const random = seededRandom(20270321);
  const cases = Array.from({ length: 24 }, (_, i) => {
    const form = (['ellipsoid', 'dome', 'cone', 'cylinder'] as const)[i % 4];
    const topM = 4 + 14 * random();
    return {
      caster: crown(form, topM * (0.1 + 0.4 * random()), topM, 1 + 5 * random()),
      sun: sunAt(15 + 50 * random(), 360 * random()),
    };
  });
  test.each(cases.map((each, i) => ({ ...each, name: `${i + 1}: ${each.caster.form}` })))(
    'seeded crown $name',
    ({ caster, sun }) => {
      for (const ground of [LEVEL, slope]) {
        const tip = shadowTip(caster, sun, optionsOn(ground));
        expect(Math.abs((tip?.lengthM ?? 0) - edgeByRays(caster, sun, ground))).toBeLessThan(0.002);
      }
    },
  );

  test('and the point that casts it lies on the surface, found by trying the whole upper surface', () => {
    const caster = crown('ellipsoid', 3, 13, 4);
    const sun = sunAt(28, 135);
    const [ex, ey] = awayFromSun(sun);
    let furthestM = 0;
    for (let theta = 0; theta <= 180; theta += 0.05) {
      // In the plane of the axis and the sun; the centre stands at 8 m.
      const out = 4 * Math.sin(degToRad(theta));
      const up = 8 + 5 * Math.cos(degToRad(theta));
      furthestM = Math.max(furthestM, out + up / Math.tan(sun.altitudeRad));
    }
    const tip = shadowTip(caster, sun, optionsOn(LEVEL));
    expect(tip?.lengthM).toBeCloseTo(furthestM, 4);
    expect(tip?.at.xM).toBeCloseTo(ex * furthestM, 3);
    expect(tip?.at.yM).toBeCloseTo(ey * furthestM, 3);
  });
});

test('of several corners the one that reaches furthest casts the tip', () => {
  const corners = [
    { xM: 0, yM: 0, zM: 5 },
    { xM: 0, yM: 4, zM: 5 },
    { xM: 3, yM: 0, zM: 5 },
  ];
  const tip = shadowTip({ casts: 'points', points: corners }, sunAt(40, 180), optionsOn(LEVEL));
  expect(tip?.cast).toEqual(corners[1]);
  expect(tip?.at.yM).toBeCloseTo(4 + 5 / Math.tan(degToRad(40)), 3);
});
