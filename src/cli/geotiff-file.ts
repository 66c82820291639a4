import { closeSync, openSync, writeSync } from 'node:fs';
import { deflateSync } from 'node:zlib';

/** One layer of a raster: row-major from the north-west, NaN where there is no value. */
export interface RasterBand {
  readonly description: string;
  readonly values: Float32Array;
}
/** Where a north-up raster of square cells lies. */
export interface RasterPlace {
  readonly columns: number;
  readonly rows: number;
  readonly cellM: number;
  /** Outer corner of the north-western cell in the projected system. */
  readonly westM: number;
  readonly northM: number;
  readonly epsg: number;
}

const STRIP_BYTES = 1 << 20;

// Field types of TIFF 6.0.
const ASCII = 2;
const SHORT = 3;
const LONG = 4;
const DOUBLE = 12;
const BYTES_OF_TYPE: Record<number, number> = { [ASCII]: 1, [SHORT]: 2, [LONG]: 4, [DOUBLE]: 8 };

interface Field {
  readonly tag: number;
  readonly type: number;
  readonly values: readonly number[] | string;
}

/**
 * Writes a float32 GeoTIFF (TIFF 6.0, OGC GeoTIFF 1.1; PixelIsArea, north up), one plane a band, deflated strip by
 * strip, so that large rasters need no second copy in memory. Band names and the no-data value are kept in the tags
 * that GDAL reads (42112, 42113).
 */
export function writeGeoTiff(
  path: string,
  bands: readonly RasterBand[],
  place: RasterPlace,
  noData: number,
): void {
  const { columns, rows } = place;
  const rowsPerStrip = Math.max(1, Math.min(rows, Math.floor(STRIP_BYTES / (columns * 4))));
  const file = openSync(path, 'w');
  try {
    let at = 8;
    const append = (bytes: Uint8Array): number => {
      const start = at;
      writeSync(file, bytes, 0, bytes.length, start);
      // Everything in a TIFF begins on an even byte.
      at += bytes.length + (bytes.length % 2);
      return start;
    };
    const offsets: number[] = [];
    const lengths: number[] = [];
    for (const band of bands)
      for (let row = 0; row < rows; row += rowsPerStrip) {
        const part = band.values.subarray(row * columns, Math.min(row + rowsPerStrip, rows) * columns);
        const strip = deflateSync(littleEndian(part, noData), { level: 5 });
        offsets.push(append(strip));
        lengths.push(strip.length);
      }
    const directory = fieldsOf(bands, place, noData, { rowsPerStrip, offsets, lengths });
    const start = append(encodeDirectory(directory, at));
    const header = new DataView(new ArrayBuffer(8));
    header.setUint16(0, 0x4949);
    header.setUint16(2, 42, true);
    header.setUint32(4, start, true);
    writeSync(file, new Uint8Array(header.buffer), 0, 8, 0);
  } finally {
    closeSync(file);
  }
}

function littleEndian(values: Float32Array, noData: number): Uint8Array {
  const view = new DataView(new ArrayBuffer(values.length * 4));
  for (let i = 0; i < values.length; i++)
    view.setFloat32(i * 4, Number.isNaN(values[i]) ? noData : values[i], true);
  return new Uint8Array(view.buffer);
}

function fieldsOf(
  bands: readonly RasterBand[],
  { columns, rows, cellM, westM, northM, epsg }: RasterPlace,
  noData: number,
  strips: { rowsPerStrip: number; offsets: number[]; lengths: number[] },
): Field[] {
  const each = (value: number) => bands.map(() => value);
  const items = bands.map(
    ({ description }, i) =>
      `<Item name="DESCRIPTION" sample="${i}" role="description">${xmlText(description)}</Item>`,
  );
  const fields: Field[] = [
    { tag: 256, type: LONG, values: [columns] },
    { tag: 257, type: LONG, values: [rows] },
    { tag: 258, type: SHORT, values: each(32) },
    { tag: 259, type: SHORT, values: [8] }, // deflate
    { tag: 262, type: SHORT, values: [1] }, // more is brighter
    { tag: 273, type: LONG, values: strips.offsets },
    { tag: 277, type: SHORT, values: [bands.length] },
    { tag: 278, type: LONG, values: [strips.rowsPerStrip] },
    { tag: 279, type: LONG, values: strips.lengths },
    { tag: 284, type: SHORT, values: [2] }, // one plane a band
    { tag: 305, type: ASCII, values: 'Leeglade' },
    { tag: 339, type: SHORT, values: each(3) }, // floating point
    { tag: 33550, type: DOUBLE, values: [cellM, cellM, 0] },
    { tag: 33922, type: DOUBLE, values: [0, 0, 0, westM, northM, 0] },
    // Key directory: version 1.1, then projected system, pixel is area, the system's code, metres.
    {
      tag: 34735,
      type: SHORT,
      values: [1, 1, 1, 4, 1024, 0, 1, 1, 1025, 0, 1, 1, 3072, 0, 1, epsg, 3076, 0, 1, 9001],
    },
    { tag: 42112, type: ASCII, values: `<GDALMetadata>${items.join('')}</GDALMetadata>` },
    { tag: 42113, type: ASCII, values: String(noData) },
  ];
  // Bands beyond the first are extra samples of no given meaning.
  if (bands.length > 1) fields.push({ tag: 338, type: SHORT, values: bands.slice(1).map(() => 0) });
  return fields.sort((a, b) => a.tag - b.tag);
}

/** ASCII only: what is beyond it becomes a character reference. */
const xmlText = (text: string): string =>
  [...text]
    .map((letter) =>
      letter >= ' ' && letter <= '~' && !'<>&"'.includes(letter) ? letter : `&#${letter.codePointAt(0)};`,
    )
    .join('');

/** The image file directory, with the values that do not fit in it behind it. */
function encodeDirectory(fields: readonly Field[], start: number): Uint8Array {
  const headBytes = 2 + 12 * fields.length + 4;
  const sizes = fields.map(({ type, values }) => BYTES_OF_TYPE[type] * countOf(values));
  const behind = sizes.reduce((sum, size) => sum + (size > 4 ? size + (size % 2) : 0), 0);
  const view = new DataView(new ArrayBuffer(headBytes + behind));
  view.setUint16(0, fields.length, true);
  let free = headBytes;
  fields.forEach((field, i) => {
    const entry = 2 + 12 * i;
    view.setUint16(entry, field.tag, true);
    view.setUint16(entry + 2, field.type, true);
    view.setUint32(entry + 4, countOf(field.values), true);
    let at = entry + 8;
    if (sizes[i] > 4) {
      view.setUint32(at, start + free, true);
      at = free;
      free += sizes[i] + (sizes[i] % 2);
    }
    putValues(view, at, field);
  });
  return new Uint8Array(view.buffer);
}

/** Texts end with a zero byte, which counts. */
const countOf = (values: Field['values']): number =>
  typeof values === 'string' ? values.length + 1 : values.length;

function putValues(view: DataView, at: number, { type, values }: Field): void {
  if (typeof values === 'string') {
    for (let i = 0; i < values.length; i++) view.setUint8(at + i, values.charCodeAt(i));
    return;
  }
  values.forEach((value, i) => {
    if (type === SHORT) view.setUint16(at + 2 * i, value, true);
    else if (type === LONG) view.setUint32(at + 4 * i, value, true);
    else view.setFloat64(at + 8 * i, value, true);
  });
}
