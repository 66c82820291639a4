import type { GridSpec } from '../numeric/grid.ts';
import { type BandSet, bandOf } from '../units/bands.ts';

/** A painted picture: RGBA, 8 bits each, row-major from the north-west. */
export interface PaintedPicture {
  readonly width: number;
  readonly height: number;
  readonly pixels: Uint8ClampedArray<ArrayBuffer>;
}

/** Red, green, blue, 0 to 255, of an ink written as #rrggbb. */
export function inkRgb(ink: string): readonly [number, number, number] {
  const value = Number.parseInt(ink.slice(1), 16);
  return [(value >> 16) & 255, (value >> 8) & 255, value & 255];
}

/** Pixels a cell side is painted with, so that band edges run smoothly without a picture of more than `mostPixels`. */
export function pixelsPerCell(spec: GridSpec, mostPixels = 1_500_000): number {
  const fit = Math.floor(Math.sqrt(mostPixels / (spec.columns * spec.rows)));
  return Math.max(1, Math.min(4, fit));
}

/**
 * Inks the values of a raster in flat bands. Values are taken bilinearly between cell centres, so that an edge
 * between bands lies where the value crosses the limit and not on the cell's side. Cells without data (NaN) stay
 * clear, whole cells at a time; beside them the value of the cell itself counts.
 * @param values one a cell, row-major from the north-west (numeric/grid.ts)
 * @param scale pixels to a side of a cell, a whole number
 */
export function paintBands(
  spec: GridSpec,
  values: Float32Array,
  bands: BandSet,
  scale = pixelsPerCell(spec),
): PaintedPicture {
  const { columns, rows } = spec;
  if (values.length !== columns * rows)
    throw new RangeError(`expected ${columns} × ${rows} values to paint, got ${values.length}`);
  const width = columns * scale;
  const height = rows * scale;
  const pixels = new Uint8ClampedArray(width * height * 4);
  const inks = bands.bands.map((band) => inkRgb(band.ink));
  for (let y = 0; y < height; y++) {
    const ownRow = Math.floor(y / scale);
    const fr = Math.min(rows - 1, Math.max(0, (y + 0.5) / scale - 0.5));
    const r0 = Math.floor(fr);
    const r1 = Math.min(rows - 1, r0 + 1);
    const v = fr - r0;
    for (let x = 0; x < width; x++) {
      const own = values[ownRow * columns + Math.floor(x / scale)];
      if (Number.isNaN(own)) continue;
      const fc = Math.min(columns - 1, Math.max(0, (x + 0.5) / scale - 0.5));
      const c0 = Math.floor(fc);
      const c1 = Math.min(columns - 1, c0 + 1);
      const u = fc - c0;
      const between =
        (1 - v) * ((1 - u) * values[r0 * columns + c0] + u * values[r0 * columns + c1]) +
        v * ((1 - u) * values[r1 * columns + c0] + u * values[r1 * columns + c1]);
      const ink = inks[bandOf(bands, Number.isNaN(between) ? own : between)];
      const at = (y * width + x) * 4;
      pixels[at] = ink[0];
      pixels[at + 1] = ink[1];
      pixels[at + 2] = ink[2];
      pixels[at + 3] = 255;
    }
  }
  return { width, height, pixels };
}
