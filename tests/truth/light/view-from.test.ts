import { expect, test } from 'vitest';
import type { LightScene } from '../../../src/light/light-types.ts';
import { computeViewFrom } from '../../../src/light/view-from.ts';
import type { ThingOutline, ViewFrom } from '../../../src/light/view-from-types.ts';
import type { Grid } from '../../../src/numeric/grid.ts';
import { runToEnd } from '../../../src/numeric/steps.ts';
import { degToRad, radToDeg } from '../../../src/units/angle.ts';
import { plainScene } from '../../light/plain-scene.ts';

// Hours of sun in 2026 at longitude 0, sun's centre, airless, counted in 5-minute steps with two independent
// ephemerides (computed for this project), to 2 h. Latitude; open; wall due south at profile angle 15, 30, 45; due
// north; ring horizon at 10, 20, 30.
const HOURS = [
  [60, 4417.2, [3565.3, 2951.7, 2330.0], [4092.8, 3923.2, 3803.8], [3075.6, 2084.3, 1311.2]],
  [45, 4400.8, [4092.8, 3241.1, 2627.4], [4231.2, 4111.8, 4008.7], [3635.9, 2782.8, 1858.5]],
  [-43, 4360.2, [4209.3, 4100.7, 4001.8], [4070.8, 3209.7, 2566.9], [3627.3, 2827.1, 1875.3]],
] as const;
const ANGLES = [15, 30, 45];
const RINGS = [10, 20, 30];

function view(scene: LightScene, month = 6): ViewFrom {
  const thingCount = Math.max(0, ...scene.crowns.thing, ...scene.prisms.thing) + 1;
  return runToEnd(computeViewFrom({ scene, xM: 0, yM: 0, readingHeightM: 0, thingCount, month }));
}
const yearOf = (hours: Float32Array, first = 0): number =>
  hours.subarray(first, first + 12).reduce((sum, value) => sum + value, 0);

/** A wall of a profile angle as seen from the origin, from end to end of the world, its face 20 m away. */
function wall(latDeg: number, towardsY: number, profileDeg: number): LightScene {
  const near = towardsY * 20;
  const south = Math.min(near, near + towardsY);
  const top = 20 * Math.tan(degToRad(profileDeg));
  return plainScene({
    latDeg,
    pieces: [{ ring: [-1e5, south, 1e5, south, 1e5, south + 1, -1e5, south + 1], top }],
  });
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

test.each(HOURS)('at latitude %d a long wall takes the published hours', (latDeg, open, south, north) => {
  const errors: number[] = [];
  for (const [towardsY, left] of [
    [-1, south],
    [1, north],
  ] as const)
    ANGLES.forEach((angle, k) => {
      const { hours } = view(wall(latDeg, towardsY, angle));
      errors.push(yearOf(hours.toThings) - (open - left[k]));
      expect(Math.abs(yearOf(hours.open) - open)).toBeLessThan(2);
      expect(Math.abs(yearOf(hours.got) - left[k])).toBeLessThan(2);
      expect(yearOf(hours.shared)).toBeCloseTo(0, 2);
    });
  console.log(`walls at ${latDeg}: ${errors.map((error) => error.toFixed(1)).join(', ')} h`);
  for (const error of errors) expect(Math.abs(error)).toBeLessThan(2);
});

test.each(HOURS)('at latitude %d land all around takes the published hours', (latDeg, open, _s, _n, left) => {
  const errors = RINGS.map((angle, k) => {
    const { hours, landAltitudeDeg } = view(plainScene({ latDeg, ground: bowl(angle) }));
    for (const altitude of landAltitudeDeg) expect(Math.abs(altitude - angle)).toBeLessThan(0.15);
    expect(yearOf(hours.got)).toBeCloseTo(yearOf(hours.aboveLand), 3);
    return yearOf(hours.toLand) - (open - left[k]);
  });
  console.log(`rings at ${latDeg}: ${errors.map((error) => error.toFixed(1)).join(', ')} h`);
  for (const error of errors) expect(Math.abs(error)).toBeLessThan(2);
});

/** Greatest and least altitude of an outline at an azimuth, by linear interpolation along its rings. */
function heightsAt({ rings }: ThingOutline, azimuthDeg: number): [number, number] {
  const found: number[] = [];
  for (const ring of rings)
    for (let i = 0; i < ring.length; i += 2) {
      const j = (i + 2) % ring.length;
      const [a, b] = [ring[i], ring[j]];
      if (a === b || (a - azimuthDeg) * (b - azimuthDeg) > 0) continue;
      found.push(ring[i + 1] + ((azimuthDeg - a) / (b - a)) * (ring[j + 1] - ring[i + 1]));
    }
  return [Math.min(...found), Math.max(...found)];
}
const azimuthsOf = ({ rings }: ThingOutline): number[] =>
  rings.flatMap((ring) => [...ring].filter((_, i) => i % 2 === 0));

// Analytic: a wall of height h whose face is d away stands at atan(h cos(az - az of the face) / d).
test('a wall stands as high as it must in every azimuth', () => {
  const scene = plainScene({ pieces: [{ ring: [-1e4, -21, 1e4, -21, 1e4, -20, -1e4, -20], top: 12 }] });
  const [outline] = view(scene).outlines;
  expect(outline.solid).toBe(true);
  for (const azimuth of [100, 135.25, 180, 200.75, 260]) {
    const analytic = radToDeg(Math.atan((12 * Math.cos(degToRad(azimuth - 180))) / 20));
    expect(Math.abs(heightsAt(outline, azimuth)[1] - analytic)).toBeLessThan(0.02);
  }
});

// Analytic: a sphere of radius r at distance D is a disc of angular radius asin(r / D) about its centre's altitude,
// and is as wide in azimuth as asin(r / d), d its distance in plan.
test('a round crown has the outline of a sphere', () => {
  const scene = plainScene({ crowns: [{ x: 16, y: 12, base: 2, top: 10, radius: 4, depthOn: 0.5 }] });
  const { outlines, letThrough, rows, columns, stepDeg } = view(scene);
  const [outline] = outlines;
  const middle = radToDeg(Math.atan2(16, 12));
  const up = radToDeg(Math.atan2(6, 20));
  const radius = radToDeg(Math.asin(4 / Math.hypot(6, 20)));
  const [low, high] = heightsAt(outline, middle);
  expect(Math.abs(high - (up + radius))).toBeLessThan(0.02);
  expect(Math.abs(low - (up - radius))).toBeLessThan(0.02);
  const width = radToDeg(Math.asin(4 / 20));
  expect(Math.abs(Math.max(...azimuthsOf(outline)) - (middle + width))).toBeLessThan(0.05);
  expect(Math.abs(Math.min(...azimuthsOf(outline)) - (middle - width))).toBeLessThan(0.05);
  expect(outline.topAltitudeDeg).toBeCloseTo(high, 1);
  // Through its middle the path is its whole width: 8 m at 0.5 a metre.
  const row = rows - 1 - Math.floor(up / stepDeg);
  expect(letThrough[row * columns + Math.floor(middle / stepDeg)]).toBeCloseTo(Math.exp(-4), 3);
  // Mean over the disc of exp(-k * chord): 2 [1 - (1 + t) exp(-t)] / t^2 with t = k * 2 r, for parallel rays.
  const t = 0.5 * 8;
  expect(outline.letsThrough).toBeCloseTo((2 * (1 - (1 + t) * Math.exp(-t))) / t ** 2, 2);
});

// Analytic: the near edge of the top of a cylinder, and the far edge of its base, in the azimuth of its axis.
test('a cylinder shows its near upper and its far lower edge', () => {
  const scene = plainScene({
    crowns: [{ x: -30, y: 0, base: 3, top: 9, radius: 5, depthOn: 0.3, form: 3 }],
  });
  const [outline] = view(scene).outlines;
  const [low, high] = heightsAt(outline, 270);
  expect(Math.abs(high - radToDeg(Math.atan(9 / 25)))).toBeLessThan(0.02);
  expect(Math.abs(low - radToDeg(Math.atan(3 / 35)))).toBeLessThan(0.02);
  expect(outline.nearestM).toBeCloseTo(25, 6);
});

// At noon the sun stands at 90 - latitude, at the solstices 23.44 degrees more or less (obliquity of the ecliptic in
// this century: 23.436 degrees, Meeus, Astronomical Algorithms, ch. 22).
test.each([
  [60, 'UTC', 0],
  [45.1, 'America/Halifax', -64.5],
  [-43.6, 'Pacific/Auckland', 171.9],
])(
  'at latitude %d the noon sun of solstices and equinoxes stands as high as it must',
  (latDeg, timeZone, lonDeg) => {
    const { sunPaths } = view(plainScene({ latDeg, timeZone, lonDeg }));
    const noon = (which: string) =>
      Math.max(...sunPaths.find((path) => path.which === which)!.points.filter((_, i) => i % 2 === 1));
    const winter = latDeg >= 0 ? 'december-solstice' : 'june-solstice';
    const summer = latDeg >= 0 ? 'june-solstice' : 'december-solstice';
    const middle = 90 - Math.abs(latDeg);
    expect(Math.abs(noon(summer) - (middle + 23.44))).toBeLessThan(0.05);
    expect(Math.abs(noon(winter) - (middle - 23.44))).toBeLessThan(0.05);
    // The day of an equinox reaches up to half a day from it: 0.2 degrees of declination.
    expect(Math.abs(noon('march-equinox') - middle)).toBeLessThan(0.22);
    expect(Math.abs(noon('september-equinox') - middle)).toBeLessThan(0.22);
  },
);
