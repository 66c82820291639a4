import { describe, expect, it } from 'vitest';
import { frameAt } from '../../src/geo/frame.ts';
import { groundFromPlane } from '../../src/geo/ground-from-plane.ts';
import { lieOfGround } from '../../src/geo/lie-of-ground.ts';
import { slopeAndAspect } from '../../src/geo/terrain.ts';
import type { Grid } from '../../src/numeric/grid.ts';

const frame = frameAt([-60.2, 60]);
const box = { west: -100, south: -100, east: 100, north: 100 };
const square = (halfM: number, x = 0, y = 0) =>
  [
    [-halfM, -halfM],
    [halfM, -halfM],
    [halfM, halfM],
    [-halfM, halfM],
  ].map(([dx, dy]) => [x + dx, y + dy] as const);
const lieOf = (ground: Grid, ...rings: ReturnType<typeof square>[]) =>
  lieOfGround(ground, slopeAndAspect(ground, frame.convergenceRad), rings);

describe('how the ground of an area lies', () => {
  const slope = groundFromPlane({ fallDeg: 4, towardDeg: 135 }, frame, box, 10);

  it('is the slope of an even slope, its way down and its height, for an area smaller than a cell too', () => {
    for (const halfM of [50, 3]) {
      const lie = lieOf(slope, square(halfM));
      expect(lie?.slopeDeg).toBeCloseTo(4, 3);
      expect(lie?.aspectDeg).toBeCloseTo(135, 1);
    }
    const lie = lieOf(slope, square(50));
    // Corner to corner the way down is the diagonal.
    const fallM = 100 * Math.SQRT2 * Math.tan((4 * Math.PI) / 180);
    const heightM = (lie?.highestM ?? 0) - (lie?.lowestM ?? 0);
    expect(heightM).toBeGreaterThan(0.94 * fallM);
    expect(heightM).toBeLessThan(fallM);
  });

  it('has no way down where the falls cancel out, and leaves holes out', () => {
    const cone: Grid = {
      ...slope,
      values: slope.values.map((_, cell) => {
        const [c, r] = [cell % slope.columns, Math.floor(cell / slope.columns)];
        const x = slope.westM + (c + 0.5) * slope.cellM;
        const y = slope.northM - (r + 0.5) * slope.cellM;
        return 50 - 0.1 * Math.hypot(x, y);
      }),
    };
    const [x, y] = [slope.westM, slope.northM].map((m) => m + slope.cellM * Math.round(-m / slope.cellM));
    const lie = lieOf(cone, square(60, x, y), square(20, x, y));
    expect(lie?.slopeDeg).toBeCloseTo((Math.atan(0.1) * 180) / Math.PI, 1);
    expect(lie?.highestM).toBeLessThan(50 - 0.1 * 19);
  });

  it('is unknown where there is no ground', () => {
    expect(lieOf(slope, square(10, 5000))).toBeNull();
    const hole: Grid = { ...slope, values: slope.values.map(() => Number.NaN) };
    expect(lieOf(hole, square(10))).toBeNull();
  });
});
