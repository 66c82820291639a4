import { describe, expect, it } from 'vitest';
import { contourIntervalM, contourLines } from '../../src/geo/contours.ts';
import type { Grid } from '../../src/numeric/grid.ts';

const gridOf = (columns: number, rows: number, elevationM: (xM: number, yM: number) => number): Grid => {
  const values = new Float32Array(columns * rows);
  const grid = { columns, rows, cellM: 2, westM: -10, northM: 30, values };
  for (let r = 0; r < rows; r++) {
    for (let c = 0; c < columns; c++)
      values[r * columns + c] = elevationM(-10 + 2 * (c + 0.5), 30 - 2 * (r + 0.5));
  }
  return grid;
};

describe('contour lines', () => {
  it('run straight across an even slope, from edge to edge, where their elevation is', () => {
    const lines = contourLines(
      gridOf(20, 15, (xM) => 100 + 0.25 * xM),
      1,
    );
    expect(lines.map((line) => line.elevationM)).toEqual([98, 99, 100, 101, 102, 103, 104, 105, 106, 107]);
    for (const { elevationM, line } of lines) {
      expect(line.length).toBe(15);
      for (const [xM] of line) expect(xM).toBeCloseTo((elevationM - 100) / 0.25, 4);
      const ys = line.map(([, yM]) => yM);
      expect(Math.max(...ys)).toBeCloseTo(29, 6);
      expect(Math.min(...ys)).toBeCloseTo(1, 6);
    }
  });

  it('close around a knoll', () => {
    const [line] = contourLines(
      gridOf(21, 21, (xM, yM) => 12 - Math.hypot(xM - 11, yM - 9)),
      5,
    ).filter((found) => found.elevationM === 5);
    expect(line.line[0]).toEqual(line.line[line.line.length - 1]);
    for (const [xM, yM] of line.line) expect(Math.abs(Math.hypot(xM - 11, yM - 9) - 7)).toBeLessThan(0.2);
  });

  it('end at holes instead of running around them', () => {
    const grid = gridOf(20, 15, (xM) => 100 + 0.25 * xM);
    for (let c = 0; c < 20; c++) grid.values[7 * 20 + c] = Number.NaN;
    const lines = contourLines(grid, 5).filter((line) => line.elevationM === 105);
    expect(lines).toHaveLength(2);
    for (const { line } of lines) for (const [xM] of line) expect(xM).toBeCloseTo(20, 4);
  });

  it('do not exist on level or empty ground', () => {
    expect(
      contourLines(
        gridOf(5, 5, () => 7.3),
        1,
      ),
    ).toEqual([]);
    expect(
      contourLines(
        gridOf(5, 5, () => Number.NaN),
        1,
      ),
    ).toEqual([]);
  });

  it.each([
    [0.5, 0.25],
    [5, 0.5],
    [11, 1],
    [40, 5],
    [100, 10],
    [9000, 200],
  ])('over a range of %f m are %f m apart', (rangeM, intervalM) => {
    expect(contourIntervalM(gridOf(2, 2, (xM) => (xM > -9 ? rangeM : 0)))).toBe(intervalM);
  });
});
