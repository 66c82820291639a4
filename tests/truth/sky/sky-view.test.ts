/**
 * How much of the sky is seen, weighted by the cosine to the vertical (what light on level ground comes by) and by
 * solid angle alone: two different figures. From the sky's directions, from the land's horizons and from the engine.
 */
import { describe, expect, test } from 'vitest';
import { computeLight } from '../../../src/light/compute-light.ts';
import { computeHorizons } from '../../../src/light/horizon-sweep.ts';
import { runToEnd } from '../../../src/numeric/steps.ts';
import { skyDirections } from '../../../src/sun/sky-directions.ts';
import { degToRad } from '../../../src/units/angle.ts';
import { plainScene } from '../../light/plain-scene.ts';
import { gridOf } from '../../reference/plain-horizon.ts';

// As the engine has them, for what light comes by; and very many made the same way, for solid angle: at the horizon a
// direction of the engine's stands for a wide slice of sky that brings next to no light.
const even = skyDirections('isotropic');
const overcast = skyDirections('cie-overcast');
const many = skyDirections('isotropic', 100_000);

type Open = (altitude: number, azimuth: number) => boolean;
function seen(of: 'even' | 'overcast' | 'solid', open: Open): number {
  const dome = { even, overcast, solid: many }[of];
  let sum = 0;
  for (let k = 0; k < dome.count; k++) {
    if (!open(dome.altitudeRad[k], dome.azimuthRad[k])) continue;
    // An even sky's share of the light is solid angle * sine / pi.
    sum += of === 'solid' ? dome.share[k] / (2 * Math.sin(dome.altitudeRad[k])) : dome.share[k];
  }
  return sum;
}

const ring = (deg: number) => (altitude: number) => altitude >= degToRad(deg);
const wall = (deg: number) => (altitude: number, azimuth: number) =>
  Math.cos(azimuth) <= 0 || Math.atan(Math.tan(altitude) / Math.cos(azimuth)) >= degToRad(deg);
const canyon = (deg: number) => (altitude: number, azimuth: number) =>
  Math.atan(Math.tan(altitude) / Math.abs(Math.cos(azimuth))) >= degToRad(deg);

// Tregenza 1987: rows of 30, 30, 24, 24, 18, 12, 6 and 1 patches, 12 degrees high, the last a cap. Solid angle of a
// patch (sr), and the row's share (%) of the hemisphere, of the light of an even and of the CIE overcast sky.
const ROWS = [
  [0, 12, 30, 0.04354, 20.791, 4.323, 2.366],
  [12, 24, 30, 0.04164, 19.882, 12.221, 8.569],
  [24, 36, 24, 0.0474, 18.105, 18.006, 15.476],
  [36, 48, 24, 0.04067, 15.536, 20.677, 20.71],
  [48, 60, 18, 0.04289, 12.288, 19.774, 22.138],
  [60, 72, 12, 0.04452, 8.503, 15.451, 18.663],
  [72, 84, 6, 0.04552, 4.347, 8.457, 10.677],
  [84, 90, 1, 0.03442, 0.548, 1.093, 1.402],
] as const;

describe('the 145 patches of the sky (Tregenza 1987)', () => {
  test('have the published solid angles, together the hemisphere', () => {
    const solid = ROWS.map(([low, high]) => Math.sin(degToRad(high)) - Math.sin(degToRad(low)));
    ROWS.forEach(([, , patches, steradians, percent], k) => {
      expect((2 * Math.PI * solid[k]) / patches).toBeCloseTo(steradians, 5);
      expect(100 * solid[k]).toBeCloseTo(percent, 3);
    });
    expect(ROWS.reduce((sum, [, , patches]) => sum + patches, 0)).toBe(145);
    expect(ROWS.reduce((sum, [, , patches, steradians]) => sum + patches * steradians, 0)).toBeCloseTo(
      2 * Math.PI,
      3,
    );
  });

  test('get from the sky’s directions, row by row, the published solid angle and light', () => {
    const errors = ROWS.map(([low, high, , , solidPercent, evenPercent, dullPercent]) => {
      const within = (altitude: number) => altitude >= degToRad(low) && altitude < degToRad(high);
      return [
        seen('solid', within) - solidPercent / 100,
        seen('even', within) - evenPercent / 100,
        seen('overcast', within) - dullPercent / 100,
      ];
    });
    console.log(`rows of patches: ${errors.map((row) => row.map((e) => e.toFixed(4)).join(' ')).join('; ')}`);
    for (const error of errors.flat()) expect(Math.abs(error)).toBeLessThan(0.003);
  });
});

// Angle; what is left beside a long wall, in the middle of a canyon, in a basin: first cosine-weighted, then by solid
// angle (Dozier & Frew 1990, level ground; the formulas after Oke 1987, Steyn 1980 and Johnson & Watson 1984).
const SKY_VIEW = [
  [15, [0.98296, 0.96593, 0.93301], [0.91667, 0.83333, 0.74118]],
  [30, [0.93301, 0.86603, 0.75], [0.83333, 0.66667, 0.5]],
  [45, [0.85355, 0.70711, 0.5], [0.75, 0.5, 0.29289]],
  [60, [0.75, 0.5, 0.25], [0.66667, 0.33333, 0.13397]],
  [90, [0.5, 0, 0], [0.5, 0, 0]],
] as const;

describe('sky view behind walls, in canyons and in basins', () => {
  test.each(SKY_VIEW)('at %d degrees from the sky’s directions, weighted both ways', (deg, cosine, solid) => {
    [wall(deg), canyon(deg), ring(deg)].forEach((open, k) => {
      expect(Math.abs(seen('even', open) - cosine[k])).toBeLessThan(0.005);
      expect(Math.abs(seen('solid', open) - solid[k])).toBeLessThan(0.003);
    });
  });

  test('of an overcast sky in canyons is what the CIE formula gives, within 0.005', () => {
    // Integrated for this project.
    expect(Math.abs(seen('overcast', canyon(30)) - 0.90963)).toBeLessThan(0.005);
    expect(Math.abs(seen('overcast', canyon(45)) - 0.77065)).toBeLessThan(0.005);
  });

  test.each(SKY_VIEW.slice(0, 4))(
    'at %d degrees from the horizons of a basin, weighted both ways',
    (deg, cosine, solid) => {
      const rise = Math.tan(degToRad(deg));
      const basin = gridOf(161, 161, 2, (x, y) => (Math.hypot(x, y) > 60 ? Math.hypot(x, y) * rise : 0));
      const spot = { columns: 1, rows: 1, cellM: 0.5, westM: -0.25, northM: 0.25 };
      const field = runToEnd(computeHorizons(basin, spot, 0))!;
      // Stations about the spot, all of them within a metre or two of the middle.
      const horizons = Array.from(field.tangent, Math.atan);
      const mean = (of: (horizon: number) => number) =>
        horizons.reduce((sum, horizon) => sum + of(horizon), 0) / horizons.length;
      expect(Math.abs(mean((h) => Math.cos(h) ** 2) - cosine[2])).toBeLessThan(0.005);
      expect(Math.abs(mean((h) => 1 - Math.sin(h)) - solid[2])).toBeLessThan(0.005);
    },
  );
});

test('the CIE overcast sky is a third as bright at the horizon as overhead and 9/7 of its mean there', () => {
  // Lz : E / pi = 9 : 7, since E = 7 pi Lz / 9 (Moon & Spencer).
  const bright = (k: number) => overcast.share[k] / even.share[k];
  const lowest = even.count - 1;
  expect(bright(0)).toBeCloseTo(9 / 7, 2);
  expect(bright(lowest) / bright(0)).toBeCloseTo((1 + 2 * Math.sin(even.altitudeRad[lowest])) / 3, 2);
});

test('the engine lights the floor of a canyon from side to side as published, within 0.005', () => {
  // Masson 2000: floor mean of the cosine-weighted sky view sqrt(h2 + 1) - h, h = height / width.
  for (const [h, mean] of [
    [0.5, 0.61803],
    [1, 0.41421],
    [2, 0.23607],
  ]) {
    const side = (south: number) => ({
      ring: [-1e5, south, 1e5, south, 1e5, south + 1, -1e5, south + 1],
      top: 20 * h,
    });
    const scene = plainScene({
      pieces: [side(10), side(-11)],
      sky: { sunshineShareByMonth: new Float32Array(12), hourly: null, diffuseSky: 'isotropic' },
    });
    const grid = { columns: 1, rows: 40, cellM: 0.5, westM: -0.25, northM: 10 };
    const { lightShare } = runToEnd(computeLight({ scene, grid, readingHeightM: 0 }));
    const june = lightShare.subarray(5 * 40, 6 * 40);
    expect(Math.abs(june.reduce((sum, share) => sum + share, 0) / 40 - mean)).toBeLessThan(0.005);
  }
});
