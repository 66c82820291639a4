import { describe, expect, it } from 'vitest';
import type { Grid } from '../../src/numeric/grid.ts';
import { bandInks, luminance } from '../../src/sheets/band-inks.ts';
import { bandRegions, coarserPart } from '../../src/sheets/band-regions.ts';
import { hatchLines } from '../../src/sheets/hatch.ts';
import { LIGHT_BANDS, WIND_CUT_BANDS } from '../../src/units/bands.ts';

const grid = (rows: number[][]): Grid => ({
  columns: rows[0].length,
  rows: rows.length,
  cellM: 1,
  westM: 0,
  northM: 0,
  values: new Float32Array(rows.flat()),
});
describe('bands as areas', () => {
  it('cover all ground with the lowest band and leave out what has no value', () => {
    const regions = bandRegions(
      grid([
        [0.1, 0.1, 0.1],
        [0.1, Number.NaN, 0.1],
        [0.1, 0.1, 0.1],
      ]),
      LIGHT_BANDS,
    );
    expect(regions).toHaveLength(1);
    expect(regions[0].band).toBe(0);
    // Outer ring and hole.
    expect(regions[0].rings).toHaveLength(2);
  });

  it('draw the limit between two bands where the value crosses it', () => {
    // 0.2 to 0.4 over one step: the limit of 0.3 lies half way, at column 2.
    const rows = Array.from({ length: 4 }, () => [0.2, 0.2, 0.4, 0.4]);
    const [, half] = bandRegions(grid(rows), LIGHT_BANDS);
    expect(half.band).toBe(1);
    expect(Math.min(...half.rings[0].map(([x]) => x))).toBeCloseTo(2, 6);
  });

  it('are averaged over cells too fine for paper', () => {
    const fine = grid([
      [1, 2, 3, Number.NaN],
      [3, 2, Number.NaN, Number.NaN],
    ]);
    const coarse = coarserPart(fine, { firstColumn: 0, firstRow: 0, columns: 4, rows: 2 }, 2);
    expect(Array.from(coarse.values)).toEqual([2, Number.NaN]);
    expect(coarse.cellM).toBe(2);
  });
});

describe('band inks', () => {
  it('give every band of a set a hatching of its own, closer the darker it is', () => {
    for (const set of [LIGHT_BANDS, WIND_CUT_BANDS]) {
      const inks = bandInks(set, 'ink');
      const lines = inks.map((ink) =>
        ink.hatchings.reduce((sum, hatching) => sum + 1 / hatching.spacingMm, 0),
      );
      expect(new Set(lines).size).toBe(set.bands.length);
      const byDarkness = set.bands
        .map((band, i) => ({ light: luminance(band.ink), lines: lines[i] }))
        .sort((a, b) => b.light - a.light);
      for (let i = 1; i < byDarkness.length; i++)
        expect(byDarkness[i].lines).toBeGreaterThan(byDarkness[i - 1].lines);
    }
  });
});

describe('hatching', () => {
  const square = (x: number, y: number, side: number) =>
    [
      [x, y],
      [x + side, y],
      [x + side, y + side],
      [x, y + side],
    ] as const;

  it('fills an area with lines whose length is area over spacing', () => {
    for (const angleDeg of [0, 30, 45, -45, 90]) {
      const total = hatchLines([square(3, 4, 20)], { angleDeg, spacingMm: 0.5 }).reduce(
        (sum, [[x1, y1], [x2, y2]]) => sum + Math.hypot(x2 - x1, y2 - y1),
        0,
      );
      expect(Math.abs(total * 0.5 - 400)).toBeLessThan(12);
    }
  });

  it('leaves holes open', () => {
    const lines = hatchLines([square(0.25, 0.25, 10), square(3.25, 3.25, 4)], { angleDeg: 0, spacingMm: 1 });
    const inHole = lines.filter(([[x1, y], [x2]]) => y > 3.25 && y < 7.25 && x1 < 4 && x2 > 6);
    expect(inHole).toEqual([]);
  });
});
