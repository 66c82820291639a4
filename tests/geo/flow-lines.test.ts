import { describe, expect, test } from 'vitest';
import { drainage } from '../../src/geo/drainage.ts';
import { flowLines } from '../../src/geo/flow-lines.ts';
import type { Grid } from '../../src/numeric/grid.ts';

/** A valley that falls to the south along x = 105, on cells of 10 m. */
const valley = (elevation: (column: number, row: number) => number): Grid => ({
  columns: 21,
  rows: 30,
  cellM: 10,
  westM: 0,
  northM: 300,
  values: Float32Array.from({ length: 21 * 30 }, (_, cell) => elevation(cell % 21, Math.floor(cell / 21))),
});
const plain = valley((column, row) => 100 - 0.5 * row + 2 * Math.abs(column - 10));

describe('lines along which much drains', () => {
  test('one runs down the bottom of a valley, from where enough has come together', () => {
    const [line, ...more] = flowLines(plain, drainage(plain), 10_000, () => false);
    expect(more).toEqual([]);
    for (const [x] of line.line) expect(x).toBeCloseTo(105, 6);
    const ys = line.line.map(([, y]) => y);
    expect(ys).toEqual(ys.toSorted((a, b) => b - a));
    expect(ys[ys.length - 1]).toBe(5);
    expect(ys[0]).toBeLessThan(295);
    expect(line.upslopeM2).toBeGreaterThan(30_000);
  });

  test('stops where what arrives stays', () => {
    const still = (cell: number) => Math.floor(cell / 21) >= 20;
    const [{ line }] = flowLines(plain, drainage(plain), 10_000, still);
    expect(line[line.length - 1][1]).toBe(95);
  });

  test('a side valley ends where it joins', () => {
    // Two valleys, the western one turning into the eastern at half way.
    const forked = valley((column, row) => {
      const west = 4 + Math.max(0, row - 8) * 0.5;
      return 100 - 0.5 * row + 2 * Math.min(Math.abs(column - 14), Math.abs(column - west));
    });
    const lines = flowLines(forked, drainage(forked), 4_000, () => false);
    expect(lines.length).toBe(2);
    const [long, side] = lines;
    const end = side.line[side.line.length - 1];
    const gap = Math.min(...long.line.map(([x, y]) => Math.hypot(x - end[0], y - end[1])));
    expect(gap).toBeLessThan(10);
    expect(side.upslopeM2).toBeLessThan(long.upslopeM2);
  });
});
