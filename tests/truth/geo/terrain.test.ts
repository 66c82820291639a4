import { describe, expect, it } from 'vitest';
import { slopeAndAspect } from '../../../src/geo/terrain.ts';
import type { Grid } from '../../../src/numeric/grid.ts';

const gridOf = (rows: number[][], cellM: number): Grid => ({
  columns: rows[0].length,
  rows: rows.length,
  cellM,
  westM: 0,
  northM: 0,
  values: Float32Array.from(rows.flat()),
});
const CENTRE = 4;

describe('slope and aspect after Horn 1981', () => {
  it('gives 75.25762° for the published worked example, falling 180.75° of north', () => {
    // Reference, section 10, source S42; the aspect computed there from the same gradients.
    const { slopeDeg, aspectDeg } = slopeAndAspect(
      gridOf(
        [
          [50, 45, 50],
          [30, 30, 30],
          [8, 10, 10],
        ],
        5,
      ),
      0,
    );
    expect(Math.abs(slopeDeg[CENTRE] - 75.25762)).toBeLessThan(1e-4);
    expect(Math.abs(aspectDeg[CENTRE] - 180.75)).toBeLessThan(0.01);
  });

  it('gives 92.64° for the published aspect example', () => {
    const { aspectDeg } = slopeAndAspect(
      gridOf(
        [
          [101, 92, 85],
          [101, 92, 85],
          [101, 91, 84],
        ],
        1,
      ),
      0,
    );
    expect(Math.abs(aspectDeg[CENTRE] - 92.64)).toBeLessThan(0.005);
  });

  it('gives the published slopes and aspects of a pyramid', () => {
    // Reference, section 10, source S43: rows raised by one toward the middle row, which is 3 4 5 5 5 4 3.
    const row = (k: number): number[] => [0, 1, 2, 3, 2, 1, 0].map((height) => height + k);
    const pyramid = gridOf([row(0), row(1), row(2), [3, 4, 5, 5, 5, 4, 3], row(2), row(1), row(0)], 5);
    const { slopeDeg, aspectDeg } = slopeAndAspect(pyramid, 0);
    const half = [
      [15.79, 15.79, 11.31, 15.79, 15.79],
      [15.79, 13.9, 8.53, 13.9, 15.79],
      [11.31, 8.53, 0, 8.53, 11.31],
    ];
    const expected = [...half, half[1], half[0]];
    for (let r = 0; r < 5; r++) {
      for (let c = 0; c < 5; c++) {
        expect(Math.abs(slopeDeg[(r + 1) * 7 + c + 1] - expected[r][c])).toBeLessThan(0.005);
      }
    }
    const aspectAt = (r: number, c: number): number => aspectDeg[r * 7 + c];
    expect([aspectAt(1, 1), aspectAt(1, 3), aspectAt(1, 5)]).toEqual([315, 0, 45]);
    expect([aspectAt(3, 1), aspectAt(3, 5)]).toEqual([270, 90]);
    expect([aspectAt(5, 1), aspectAt(5, 3), aspectAt(5, 5)]).toEqual([225, 180, 135]);
    expect(aspectAt(3, 3)).toBeNaN();
  });
});
