import { describe, expect, it } from 'vitest';
import { frameAt, type LocalXY, toLocal, toLonLat } from '../../src/geo/frame.ts';
import { destination } from '../../src/geo/geodesic.ts';
import { groundFromPlane } from '../../src/geo/ground-from-plane.ts';
import { groundFromSpots } from '../../src/geo/ground-from-spots.ts';
import { sampleGrid } from '../../src/numeric/grid.ts';
import { seededRandom } from '../../src/numeric/random.ts';

const frame = frameAt([-64.5, 45.1]);
const box = { west: -150, south: -120, east: 260, north: 90 };

describe('ground that falls evenly', () => {
  it('falls as stated along the true azimuth', () => {
    const ground = groundFromPlane({ fallDeg: 3.81407, towardDeg: 135 }, frame, box, 50);
    const [xM, yM] = toLocal(frame, destination(frame.centreLonLat, 135, 75));
    const [x0, y0] = toLocal(frame, frame.centreLonLat);
    expect(sampleGrid(ground, x0, y0) - sampleGrid(ground, xM, yM)).toBeCloseTo(5, 2);
    const [xAcross, yAcross] = toLocal(frame, destination(frame.centreLonLat, 45, 75));
    expect(sampleGrid(ground, xAcross, yAcross)).toBeCloseTo(sampleGrid(ground, x0, y0), 2);
  });

  it('is a plane to float32 rounding everywhere in the box, its corners too', () => {
    const ground = groundFromPlane({ fallDeg: 9, towardDeg: 20 }, frame, box);
    const random = seededRandom(5);
    const at = (x: number, y: number) => sampleGrid(ground, x, y);
    const perX = (at(260, 0) - at(-150, 0)) / 410;
    const perY = (at(0, 90) - at(0, -120)) / 210;
    const points = [...Array(200)].map(() => [-150 + 410 * random(), -120 + 210 * random()]);
    for (const [x, y] of [...points, [-150, -120], [260, 90]]) {
      expect(Math.abs(at(x, y) - (at(0, 0) + perX * x + perY * y))).toBeLessThan(2e-5);
    }
  });
});

describe('ground through spot levels', () => {
  const spot = (xM: number, yM: number, elevationM: number) => ({
    lonLat: toLonLat(frame, [xM, yM] as LocalXY),
    elevationM,
  });
  const plane = (x: number, y: number) => 30 + 0.05 * x - 0.02 * y;

  it('is the plane of three levels, inside and outside their triangle', () => {
    const spots = [
      [0, 0],
      [100, 10],
      [20, 80],
    ].map(([x, y]) => spot(x, y, plane(x, y)));
    const ground = groundFromSpots(spots, frame, box);
    for (const [x, y] of [
      [30, 30],
      [-150, -120],
      [260, 90],
      [99, 9],
    ]) {
      expect(sampleGrid(ground, x, y)).toBeCloseTo(plane(x, y), 3);
    }
  });

  it('meets its levels and does not break where they end', () => {
    const spots = [spot(0, 0, 10), spot(100, 0, 14), spot(100, 80, 11), spot(0, 80, 12), spot(50, 40, 16)];
    const ground = groundFromSpots(spots, frame, box);
    expect(sampleGrid(ground, 50, 40)).toBeGreaterThan(15.7);
    expect(sampleGrid(ground, 100, 0)).toBeCloseTo(14, 0);
    // No cliff: steps between neighbouring cells stay those of a slope.
    let steepest = 0;
    for (let r = 0; r < ground.rows; r++) {
      for (let c = 1; c < ground.columns; c++) {
        const i = r * ground.columns + c;
        steepest = Math.max(steepest, Math.abs(ground.values[i] - ground.values[i - 1]) / ground.cellM);
      }
    }
    expect(steepest).toBeLessThan(0.2);
  });

  it.each([
    [[spot(0, 0, 1), spot(9, 9, 2)], /^2 spot level\(s\)/],
    [[spot(0, 0, 1), spot(0, 0, 3), spot(9, 9, 2)], /^2 spot level\(s\) at different places/],
    [[spot(0, 0, 1), spot(10, 10, 3), spot(20, 20, 2)], /on one line/],
    [[spot(0, 0, 1), spot(10, 10, Number.NaN), spot(0, 20, 2)], /^Spot level 2: the elevation is NaN/],
  ])('refuses too little', (spots, words) => {
    expect(() => groundFromSpots(spots, frame, box)).toThrow(words);
  });
});
