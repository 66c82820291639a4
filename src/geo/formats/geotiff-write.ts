import type { GridSpec } from '../../numeric/grid.ts';
import { cellCount } from '../../numeric/grid.ts';
import { BadInputError } from '../../units/bad-input.ts';
import type { Frame } from '../frame.ts';

/** One band: a float32 value a cell, row-major as the grid, NaN where there is none. */
export interface NamedBand {
  readonly name: string;
  readonly values: Float32Array;
}

const NO_DATA = -9999;
const LARGEST_BYTES = 2 ** 32 - 1;
const STRIP_BYTES = 1 << 16;

const SHORT = 3;
const LONG = 4;
const DOUBLE = 12;
const ASCII = 2;
const BYTES_OF: Readonly<Record<number, number>> = { [ASCII]: 1, [SHORT]: 2, [LONG]: 4, [DOUBLE]: 8 };

interface Tag {
  readonly code: number;
  readonly type: number;
  readonly values: readonly number[];
}

/**
 * A GeoTIFF of the grid in the frame's UTM zone: float32, little-endian, uncompressed, band after band in strips,
 * PixelIsArea, north up; NaN is written as -9999 and declared as no-data; names as GDAL's band descriptions.
 * Written here because the reading library's writer keeps 1000 bytes for its directory, which a dozen named bands
 * outgrow, and takes a second a million values. TIFF 6.0 (1992), OGC GeoTIFF 1.1.
 * @throws BadInputError past the 4 GB that a classic TIFF can hold, or when a band does not fit the grid.
 */
export function writeGeoTiff(bands: readonly NamedBand[], spec: GridSpec, frame: Frame): Uint8Array {
  const cells = cellCount(spec);
  for (const band of bands) {
    if (band.values.length !== cells) {
      throw new BadInputError(
        `Band "${band.name}" has ${band.values.length} values; the grid has ${cells} cells.`,
      );
    }
  }
  const rowsPerStrip = Math.max(1, Math.min(spec.rows, Math.floor(STRIP_BYTES / (4 * spec.columns))));
  const stripsPerBand = Math.ceil(spec.rows / rowsPerStrip);
  const lastRows = spec.rows - (stripsPerBand - 1) * rowsPerStrip;
  const counts = bands.flatMap(() =>
    Array.from(
      { length: stripsPerBand },
      (_, s) => 4 * spec.columns * (s === stripsPerBand - 1 ? lastRows : rowsPerStrip),
    ),
  );
  // The directory's length does not depend on where the strips start, so it is laid out once to be measured.
  const dataStart = encodeDirectory(directory(bands, spec, frame, rowsPerStrip, counts, 0)).length;
  const totalBytes = dataStart + 4 * cells * bands.length;
  if (totalBytes > LARGEST_BYTES) {
    throw new BadInputError(
      `The raster would have ${Math.round(totalBytes / 1e6)} MB, a TIFF holds 4 GB: choose larger cells.`,
    );
  }
  const file = new Uint8Array(totalBytes);
  file.set(encodeDirectory(directory(bands, spec, frame, rowsPerStrip, counts, dataStart)));
  const view = new DataView(file.buffer);
  let at = dataStart;
  for (const { values } of bands) {
    for (let i = 0; i < cells; i++, at += 4) {
      view.setFloat32(at, Number.isNaN(values[i]) ? NO_DATA : values[i], true);
    }
  }
  return file;
}

function directory(
  bands: readonly NamedBand[],
  spec: GridSpec,
  frame: Frame,
  rowsPerStrip: number,
  counts: readonly number[],
  dataStart: number,
): Tag[] {
  let next = dataStart;
  const offsets = counts.map((count) => {
    const offset = next;
    next += count;
    return offset;
  });
  const perBand = (value: number): number[] => bands.map(() => value);
  const west = frame.originEastingM + spec.westM;
  const north = frame.originNorthingM + spec.northM;
  // GDAL takes entities off twice, once for the XML and once for its own item.
  const items = bands.map(
    ({ name }, i) =>
      `  <Item name="DESCRIPTION" sample="${i}" role="description">${escaped(escaped(name))}</Item>\n`,
  );
  const tags: Tag[] = [
    { code: 256, type: LONG, values: [spec.columns] }, // ImageWidth
    { code: 257, type: LONG, values: [spec.rows] }, // ImageLength
    { code: 258, type: SHORT, values: perBand(32) }, // BitsPerSample
    { code: 259, type: SHORT, values: [1] }, // Compression: none
    { code: 262, type: SHORT, values: [1] }, // PhotometricInterpretation: black is zero
    { code: 273, type: LONG, values: offsets }, // StripOffsets
    { code: 277, type: SHORT, values: [bands.length] }, // SamplesPerPixel
    { code: 278, type: LONG, values: [rowsPerStrip] }, // RowsPerStrip
    { code: 279, type: LONG, values: counts }, // StripByteCounts
    { code: 284, type: SHORT, values: [2] }, // PlanarConfiguration: band after band
    { code: 339, type: SHORT, values: perBand(3) }, // SampleFormat: floating point
    { code: 33550, type: DOUBLE, values: [spec.cellM, spec.cellM, 0] }, // ModelPixelScale
    { code: 33922, type: DOUBLE, values: [0, 0, 0, west, north, 0] }, // ModelTiepoint
    // GeoKeyDirectory 1.1.0: projected, PixelIsArea, the EPSG code, metres
    {
      code: 34735,
      type: SHORT,
      values: [1, 1, 0, 4, 1024, 0, 1, 1, 1025, 0, 1, 1, 3072, 0, 1, frame.epsg, 3076, 0, 1, 9001],
    },
    { code: 42112, type: ASCII, values: ascii(`<GDALMetadata>\n${items.join('')}</GDALMetadata>\n`) },
    { code: 42113, type: ASCII, values: ascii(String(NO_DATA)) }, // GDAL_NODATA
  ];
  // Bands past the one that black-is-zero accounts for are extra samples of no stated meaning.
  if (bands.length > 1) tags.push({ code: 338, type: SHORT, values: bands.slice(1).map(() => 0) });
  return tags.sort((a, b) => a.code - b.code);
}

const escaped = (text: string): string =>
  text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');

const ascii = (text: string): number[] => [...new TextEncoder().encode(text), 0];

/** Header and one directory; values that do not fit their four bytes follow it, on even offsets. */
function encodeDirectory(tags: readonly Tag[]): Uint8Array {
  const sizeOf = (tag: Tag): number => tag.values.length * BYTES_OF[tag.type];
  const evenly = (bytes: number): number => bytes + (bytes & 1);
  const start = 8;
  let outside = start + 2 + 12 * tags.length + 4;
  const total = tags.reduce((sum, tag) => sum + (sizeOf(tag) > 4 ? evenly(sizeOf(tag)) : 0), outside);
  const bytes = new Uint8Array(evenly(total));
  const view = new DataView(bytes.buffer);
  view.setUint16(0, 0x4949, true);
  view.setUint16(2, 42, true);
  view.setUint32(4, start, true);
  view.setUint16(start, tags.length, true);
  tags.forEach((tag, i) => {
    const entry = start + 2 + 12 * i;
    view.setUint16(entry, tag.code, true);
    view.setUint16(entry + 2, tag.type, true);
    view.setUint32(entry + 4, tag.values.length, true);
    let at = entry + 8;
    if (sizeOf(tag) > 4) {
      view.setUint32(at, outside, true);
      at = outside;
      outside += evenly(sizeOf(tag));
    }
    for (const value of tag.values) {
      if (tag.type === SHORT) view.setUint16(at, value, true);
      else if (tag.type === LONG) view.setUint32(at, value, true);
      else if (tag.type === DOUBLE) view.setFloat64(at, value, true);
      else view.setUint8(at, value);
      at += BYTES_OF[tag.type];
    }
  });
  return bytes;
}
