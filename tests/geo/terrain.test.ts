import { describe, expect, it } from 'vitest';
import { frameAt } from '../../src/geo/frame.ts';
import { groundFromPlane } from '../../src/geo/ground-from-plane.ts';
import { hillshade, slopeAndAspect } from '../../src/geo/terrain.ts';
import type { Grid } from '../../src/numeric/grid.ts';

const frame = frameAt([-60.2, 60]);
const box = { west: -50, south: -50, east: 50, north: 50 };

describe('slope and aspect', () => {
  it('of an even slope are right in every cell, the edge and corners too, and from true north', () => {
    const ground = groundFromPlane({ fallDeg: 4, towardDeg: 135 }, frame, box);
    const { slopeDeg, aspectDeg } = slopeAndAspect(ground, frame.convergenceRad);
    for (let i = 0; i < slopeDeg.length; i++) {
      expect(Math.abs(slopeDeg[i] - 4)).toBeLessThan(0.001);
      expect(Math.abs(aspectDeg[i] - 135)).toBeLessThan(0.02);
    }
  });

  it('stay exact beside a hole, and the hole has neither', () => {
    const ground = groundFromPlane({ fallDeg: 10, towardDeg: 250 }, frame, box);
    const hole = 10 * ground.columns + 12;
    ground.values[hole] = Number.NaN;
    const { slopeDeg, aspectDeg } = slopeAndAspect(ground, frame.convergenceRad);
    expect(slopeDeg[hole]).toBeNaN();
    expect(aspectDeg[hole]).toBeNaN();
    for (const beside of [hole - 1, hole + 1, hole - ground.columns, hole + ground.columns + 1]) {
      expect(Math.abs(slopeDeg[beside] - 10)).toBeLessThan(0.002);
    }
  });
});

describe('hillshade', () => {
  const shadeOf = (fallDeg: number, towardDeg: number): number =>
    hillshade(groundFromPlane({ fallDeg, towardDeg }, frame, box), frame.convergenceRad)[40];

  it('is brightest on slopes toward the light and darkest away from it', () => {
    const level = shadeOf(0, 0);
    expect(level).toBeCloseTo(Math.sin((40 * Math.PI) / 180), 6);
    expect(shadeOf(10, 315)).toBeGreaterThan(level);
    expect(shadeOf(10, 135)).toBeLessThan(level);
    expect(shadeOf(10, 45)).toBeLessThan(shadeOf(10, 315));
  });

  it('tells gentle slopes apart without steps', () => {
    const shades = [0, 0.1, 0.2, 0.3, 0.4, 0.5].map((fallDeg) => shadeOf(fallDeg, 315));
    for (let i = 1; i < shades.length; i++) expect(shades[i]).toBeGreaterThan(shades[i - 1]);
  });

  it('stays between 0 and 1 and leaves holes empty', () => {
    const rough: Grid = { ...groundFromPlane({ fallDeg: 0, towardDeg: 0 }, frame, box) };
    for (let i = 0; i < rough.values.length; i++) rough.values[i] = (i * 7919) % 97;
    rough.values[5] = Number.NaN;
    const shade = hillshade(rough, 0, { exaggeration: 3 });
    expect(shade[5]).toBeNaN();
    for (let i = 0; i < shade.length; i++) if (i !== 5) expect(shade[i] >= 0 && shade[i] <= 1).toBe(true);
  });
});
