import { describe, expect, test } from 'vitest';
import type { GridSpec } from '../../src/numeric/grid.ts';
import { levelLines } from '../../src/numeric/level-lines.ts';

const N = Number.NaN;
const drawn = (rows: number[][]): [GridSpec, Float32Array] => [
  { columns: rows[0].length, rows: rows.length, cellM: 1, westM: 0, northM: rows.length },
  Float32Array.from(rows.flat()),
];

describe('lines at a value', () => {
  test('run where the value is crossed between cell centres, from border to border', () => {
    const [spec, values] = drawn(Array.from({ length: 4 }, () => [0, 0, 1, 1]));
    const lines = levelLines(spec, values, 0.25);
    expect(lines).toHaveLength(1);
    // A quarter of the way from the centre at 1.5 to that at 2.5.
    for (const [x] of lines[0]) expect(x).toBeCloseTo(1.75, 9);
    const rows = lines[0].map(([, y]) => y);
    expect([Math.min(...rows), Math.max(...rows)]).toEqual([0, 4]);
  });

  test('stop at missing cells', () => {
    const [spec, values] = drawn([
      [0, 0, 1, 1],
      [0, 0, 1, 1],
      [0, N, N, 1],
      [0, N, N, 1],
    ]);
    const lines = levelLines(spec, values, 0.5);
    expect(lines).toHaveLength(1);
    for (const [x, y] of lines[0]) {
      expect(x).toBeCloseTo(2, 9);
      expect(y).toBeLessThanOrEqual(1.5 + 1e-6);
    }
  });

  test('close around a peak, on a circle where the ground is a cone, and leave out specks', () => {
    const at = (r: number, c: number) => 20 - Math.hypot(r - 20, c - 20);
    const [spec, values] = drawn(
      Array.from({ length: 41 }, (_, r) => Array.from({ length: 41 }, (_, c) => at(r, c))),
    );
    const [ring, ...more] = levelLines(spec, values, 8);
    expect(more).toEqual([]);
    expect(ring[0]).toEqual(ring[ring.length - 1]);
    // Linear between centres a cone of radius 12 cells is met within 1 / (8 * 12); rounding cuts corners by as much again.
    for (const [x, y] of ring) expect(Math.hypot(x - 20.5, y - 20.5)).toBeCloseTo(12, 1);
    const [flat, speck] = drawn([
      [0, 0, 0],
      [0, 1, 0],
      [0, 0, 0],
    ]);
    expect(levelLines(flat, speck, 0.5)).toEqual([]);
  });
});
