import { describe, expect, it } from 'vitest';
import { bandEdges, darkBelow } from '../../src/map/band-edges.ts';
import { inkRgb, paintBands, pixelsPerCell } from '../../src/map/picture-painter.ts';
import type { GridSpec } from '../../src/numeric/grid.ts';
import { LIGHT_BANDS, WIND_CUT_BANDS } from '../../src/units/bands.ts';

const spec = (columns: number, rows: number): GridSpec => ({ columns, rows, cellM: 1, westM: 0, northM: 0 });
const pixel = (picture: { width: number; pixels: Uint8ClampedArray }, x: number, y: number) =>
  Array.from(picture.pixels.subarray((y * picture.width + x) * 4, (y * picture.width + x) * 4 + 4));

describe('painting a picture in bands', () => {
  it('gives every cell the ink of its band', () => {
    const painted = paintBands(spec(5, 1), Float32Array.of(0.1, 0.3, 0.5, 0.7, 0.9), LIGHT_BANDS, 1);
    LIGHT_BANDS.bands.forEach((band, index) => {
      expect(pixel(painted, index, 0)).toEqual([...inkRgb(band.ink), 255]);
    });
  });

  it('leaves cells without data clear and paints their neighbours from their own value', () => {
    const painted = paintBands(spec(3, 1), Float32Array.of(0.9, Number.NaN, 0.1), LIGHT_BANDS, 2);
    expect(pixel(painted, 1, 0)).toEqual([...inkRgb('#f4ecc6'), 255]);
    expect(pixel(painted, 2, 0)[3]).toBe(0);
    expect(pixel(painted, 3, 1)[3]).toBe(0);
    expect(pixel(painted, 4, 0)).toEqual([...inkRgb('#3f5254'), 255]);
  });

  it('puts the edge of a band where the value crosses the limit, not on the side of a cell', () => {
    // 0.2 at x = 0.5 and 0.6 at x = 1.5 cross 0.3 at x = 0.75 and 0.5 at x = 1.25.
    const painted = paintBands(spec(2, 1), Float32Array.of(0.2, 0.6), LIGHT_BANDS, 40);
    const names = Array.from({ length: 80 }, (_, x) => pixel(painted, x, 0).join());
    const half = [...inkRgb('#68806e'), 255].join();
    expect(names.indexOf(half)).toBe(30);
    expect(names.lastIndexOf(half)).toBe(49);
  });

  it('paints fewer pixels a cell as the raster grows', () => {
    expect(pixelsPerCell(spec(100, 100))).toBe(4);
    expect(pixelsPerCell(spec(800, 600))).toBe(1);
    expect(pixelsPerCell(spec(5000, 5000))).toBe(1);
  });

  it('refuses a raster whose length is not columns times rows', () => {
    expect(() => paintBands(spec(3, 2), new Float32Array(5), LIGHT_BANDS, 1)).toThrow(/3 × 2/);
  });
});

describe('ink lines between the bands', () => {
  const slope = Float32Array.from({ length: 40 }, (_, i) => (i % 8) / 8 + 0.0001);

  it('runs one line through each limit that is crossed, at the crossing', () => {
    const edges = bandEdges(spec(8, 5), slope, LIGHT_BANDS);
    expect(edges.map((edge) => edge.limit)).toEqual([0.3, 0.5, 0.68, 0.84]);
    for (const edge of edges) {
      expect(edge.lines).toHaveLength(1);
      const [line] = edge.lines;
      // One crossing a row, and at both ends the border of the raster.
      expect(line).toHaveLength(7);
      const ys = line.map(([, y]) => y).sort((a, b) => a - b);
      expect(ys).toEqual([0, 0.5, 1.5, 2.5, 3.5, 4.5, 5]);
      for (const [x] of line) expect(x).toBeCloseTo((edge.limit - 0.0001) * 8 + 0.5, 4);
    }
  });

  it('draws nothing along the border of the raster or around missing cells', () => {
    const flat = new Float32Array(64).fill(0.95);
    flat[27] = Number.NaN;
    for (const edge of bandEdges(spec(8, 8), flat, LIGHT_BANDS)) expect(edge.lines).toEqual([]);
  });

  it('knows which side of a limit is the dark one', () => {
    expect(darkBelow(LIGHT_BANDS)).toBe(true);
    expect(darkBelow(WIND_CUT_BANDS)).toBe(false);
    const [deepest] = bandEdges(spec(8, 5), slope, LIGHT_BANDS);
    expect(deepest.depth).toBe(4);
    const xs = deepest.darkSide.flat(2).map(([x]) => x);
    expect(Math.min(...xs)).toBe(0);
    expect(Math.max(...xs)).toBeCloseTo((0.3 - 0.0001) * 8 + 0.5, 4);
  });
});
