import { describe, expect, it } from 'vitest';
import { horizonSumDeg } from '../../../src/geo/exposure.ts';
import type { Grid } from '../../../src/numeric/grid.ts';

const land = (height: (x: number, y: number) => number, cellM = 5): Grid => {
  const side = 300;
  const half = (side * cellM) / 2;
  return {
    columns: side,
    rows: side,
    cellM,
    westM: -half,
    northM: half,
    values: Float32Array.from({ length: side * side }, (_, i) =>
      height(-half + ((i % side) + 0.5) * cellM, half - (Math.floor(i / side) + 0.5) * cellM),
    ),
  };
};
const deg = (slope: number) => (Math.atan(slope) * 180) / Math.PI;

describe('the sum of horizon angles (the forestry index of exposure)', () => {
  it('is nothing on level ground and on one slope', () => {
    expect(
      horizonSumDeg(
        land(() => 50),
        0,
        0,
        0,
      ),
    ).toBeCloseTo(0, 9);
    expect(
      Math.abs(
        horizonSumDeg(
          land((x, y) => 0.1 * x + 0.05 * y),
          0,
          0,
          0,
        ),
      ),
    ).toBeLessThan(0.05);
  });
  it('is eight times the slope at the bottom of a bowl, and as much below nothing on a cone', () => {
    for (const slope of [0.1, 0.3]) {
      const bowl = land((x, y) => slope * Math.hypot(x, y));
      const cone = land((x, y) => -slope * Math.hypot(x, y));
      expect(Math.abs(horizonSumDeg(bowl, 0, 0, 0.02) - 8 * deg(slope))).toBeLessThan(2);
      // The summit lies between four cells, 3.54 m down the slope; the nearest look is at 50 m.
      const seen = (slope * (50 - 2.5 * Math.SQRT2)) / 50;
      expect(Math.abs(horizonSumDeg(cone, 0, 0, 0.02) + 8 * deg(seen))).toBeLessThan(0.2);
    }
  });
  it('on the floor of a valley is six slopes, the diagonal ones gentler', () => {
    const valley = land((x) => 0.2 * Math.abs(x));
    const expected = 2 * deg(0.2) + 4 * deg(0.2 * Math.SQRT1_2);
    expect(Math.abs(horizonSumDeg(valley, 0, 0, 0) - expected)).toBeLessThan(1.5);
  });
  it('beside a wall of land counts the angle to its top from where one stands', () => {
    // A bank of 40 m whose edge lies 100 m to the east: one ray meets it at 100 m, two at 141 m.
    const bank = land((x) => (x > 100 ? 40 : 0), 2);
    const expected = deg(0.4) + 2 * deg(0.4 * Math.SQRT1_2);
    expect(Math.abs(horizonSumDeg(bank, 0, 0, 0) - expected)).toBeLessThan(2);
  });
  it('has no value where there is no ground', () => {
    expect(
      horizonSumDeg(
        land(() => Number.NaN),
        0,
        0,
        0,
      ),
    ).toBeNaN();
  });
});
