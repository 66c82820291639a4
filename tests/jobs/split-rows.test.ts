import { describe, expect, it } from 'vitest';
import { joinLayers, rowBands } from '../../src/jobs/split-rows.ts';

const grid = { columns: 3, rows: 37, cellM: 0.5, westM: 10, northM: 20 };

describe('splitting a grid by rows', () => {
  it('covers every row once, edge to edge', () => {
    for (const threads of [1, 2, 4, 16]) {
      const bands = rowBands(grid, threads);
      expect(bands.reduce((sum, band) => sum + band.rows, 0)).toBe(37);
      bands.slice(1).forEach((band, i) => {
        expect(band.northM).toBe(bands[i].northM - bands[i].rows * grid.cellM);
      });
    }
  });

  it('joins layers so that each cell is where it was', () => {
    // Two layers over three columns; the first part has one row, the second two.
    const first = Float32Array.of(1, 2, 3, 11, 12, 13);
    const second = Float32Array.of(4, 5, 6, 7, 8, 9, 14, 15, 16, 17, 18, 19);
    expect([...joinLayers([first, second], 2)]).toEqual([
      1, 2, 3, 4, 5, 6, 7, 8, 9, 11, 12, 13, 14, 15, 16, 17, 18, 19,
    ]);
  });
});
