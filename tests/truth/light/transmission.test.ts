import { expect, test } from 'vitest';
import { crownPathM } from '../../../src/crowns/path-length.ts';
import {
  depthPerMetreFromDensity,
  leafAreaDensityForTransmittance,
  silhouetteTransmittance,
} from '../../../src/crowns/transmission.ts';
import { computeLight } from '../../../src/light/compute-light.ts';
import type { LightScene } from '../../../src/light/light-types.ts';
import { runToEnd } from '../../../src/numeric/steps.ts';
import { degToRad } from '../../../src/units/angle.ts';
import { plainScene } from '../../light/plain-scene.ts';

/** Share of a wholly overcast, even sky at the origin. */
function diffuseShareAt(changes: Parameters<typeof plainScene>[0], readingHeightM = 0): number {
  const scene: LightScene = plainScene({
    ...changes,
    sky: { sunshineShareByMonth: new Float32Array(12), hourly: null, diffuseSky: 'isotropic' },
  });
  const grid = { columns: 1, rows: 1, cellM: 0.2, westM: -0.1, northM: 0.1 };
  return runToEnd(computeLight({ scene, grid, readingHeightM })).lightShare[6];
}
const slab = (depthPerM: number) => ({
  pieces: [{ ring: [-1e5, -1e5, 1e5, -1e5, 1e5, 1e5, -1e5, 1e5], base: 2, top: 3, depthOn: depthPerM }],
});

test('light falls along a path through leaves as Beer and Lambert say', () => {
  // exp(-0.5 * LAD * s), LAD 0.5 m2 m-3 (Campbell & Norman 1998, ch. 15, spherical leaves).
  const paths = [
    [1, 0.7788],
    [2, 0.6065],
    [4, 0.3679],
    [6, 0.2231],
  ];
  for (const [metres, share] of paths)
    expect(Math.exp(-depthPerMetreFromDensity(0.5) * metres)).toBeCloseTo(share, 4);
});

test('a level layer of leaves lets the published share of a beam through', () => {
  // Transmittance for LAI 1 to 5 straight down, at 45 and at 30 degrees (k = 1 / (2 cos Z)).
  const table: [altitudeDeg: number, shares: number[]][] = [
    [90, [0.6065, 0.3679, 0.2231, 0.1353, 0.0821]],
    [45, [0.4931, 0.2431, 0.1199, 0.0591, 0.0291]],
    [30, [0.3679, 0.1353, 0.0498, 0.0183, 0.0067]],
  ];
  for (const [altitudeDeg, shares] of table)
    shares.forEach((share, k) => {
      const uz = Math.sin(degToRad(altitudeDeg));
      // A layer one metre thick: a very wide cylinder.
      const path = crownPathM('cylinder', 0, 0, 0, 0, Math.cos(degToRad(altitudeDeg)), uz, 2, 3, 1e4);
      expect(Math.exp(-depthPerMetreFromDensity(k + 1) * path)).toBeCloseTo(share, 4);
    });
});

test('spherical leaves take what the ellipsoid of Campbell & Norman (eq. 15.4) takes at x = 1, within 0.001', () => {
  // k by angle from the zenith; spherical leaves exactly: 1 / (2 cos Z).
  for (const [zenithDeg, k] of [
    [0, 0.4997],
    [30, 0.577],
    [45, 0.7066],
    [60, 0.9993],
  ]) {
    const { ux, uz } = { ux: Math.sin(degToRad(zenithDeg)), uz: Math.cos(degToRad(zenithDeg)) };
    const path = crownPathM('cylinder', 0, 0, 0, ux, 0, uz, 2, 3, 1e4);
    expect(Math.abs(depthPerMetreFromDensity(1) * path - k)).toBeLessThan(0.001);
  }
});

test('the engine lets the published share of an even sky through a level layer of leaves, within 0.003', () => {
  [0.4432, 0.2194, 0.1135, 0.0603, 0.0326].forEach((share, k) => {
    expect(Math.abs(diffuseShareAt(slab(depthPerMetreFromDensity(k + 1))) - share)).toBeLessThan(0.003);
  });
});

test('the engine sees the published share of an even sky beside walls and in canyons, within 0.005', () => {
  // Cosine-weighted sky view: wall (1 + cos b) / 2, canyon centre cos b (Dozier & Frew 1990; quadrature).
  for (const [deg, wall, canyon] of [
    [15, 0.98296, 0.96593],
    [30, 0.93301, 0.86603],
    [45, 0.85355, 0.70711],
    [60, 0.75, 0.5],
  ]) {
    const top = 10 * Math.tan(degToRad(deg));
    const north = { ring: [-1e5, 10, 1e5, 10, 1e5, 11, -1e5, 11], top };
    const south = { ring: [-1e5, -11, 1e5, -11, 1e5, -10, -1e5, -10], top };
    expect(Math.abs(diffuseShareAt({ pieces: [north] }) - wall)).toBeLessThan(0.005);
    expect(Math.abs(diffuseShareAt({ pieces: [north, south] }) - canyon)).toBeLessThan(0.005);
  }
});

test('a mature crown is given the leaf density at which the published share of sky shows through it', () => {
  // Wilkinson 1992, in Tregenza & Sharples, Algorithm 1.44: oak and beech, summer and winter.
  for (const transmittance of [0.17, 0.5, 0.19, 0.47]) {
    const density = leafAreaDensityForTransmittance('ellipsoid', 20, 4, 6, transmittance);
    expect(silhouetteTransmittance('ellipsoid', 20, 4, 6, density)).toBeCloseTo(transmittance, 5);
    expect(density).toBeGreaterThan(0.05);
    expect(density).toBeLessThan(1.5);
  }
});
