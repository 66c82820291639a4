import proj4 from 'proj4';
import { BadInputError } from '../../units/bad-input.ts';
import type { LonLat } from '../frame.ts';
import { cutShort, type OpenGeoTiff, openGeoTiff, type TiffImage } from './geotiff-open.ts';

/** A picture fit to be laid on the map. */
export interface AerialPicture {
  readonly widthPx: number;
  readonly heightPx: number;
  /** Row-major from the top left, red, green, blue and alpha, 0 to 255. */
  readonly rgba: Uint8ClampedArray;
  /** Places of its outer corners, from the top left clockwise. */
  readonly cornersLonLat: [LonLat, LonLat, LonLat, LonLat];
  /** System and size of the file, for the panel. */
  readonly description: string;
}

const LARGEST_SIDE_PX = 4096;
const PIXELS_AT_A_TIME = 4e6;

/**
 * An aerial photo from a GeoTIFF of one grey or three colour bands (palette, JPEG and CMYK included), with or without
 * alpha, thinned out by means to at most 4096 pixels a side. Pixels of the no-data value are left clear.
 * @throws BadInputError as `openGeoTiff`, and for a compression that cannot be read.
 */
export async function readAerialPicture(fileName: string, bytes: ArrayBuffer): Promise<AerialPicture> {
  const file = await openGeoTiff(fileName, bytes);
  const image = imageToRead(file);
  const side = Math.max(1, Math.ceil(Math.max(image.getWidth(), image.getHeight()) / LARGEST_SIDE_PX));
  const picture = await thinnedOut(file, image, side);
  return {
    ...picture,
    cornersLonLat: cornersOf(file),
    description: `${file.system.name}, ${file.columns} × ${file.rows} pixels`,
  };
}

/** The smallest stored copy that still fills the largest picture, or the photo itself. */
function imageToRead(file: OpenGeoTiff): TiffImage {
  const longest = (image: TiffImage): number => Math.max(image.getWidth(), image.getHeight());
  const large = file.overviews.filter((overview) => longest(overview) >= LARGEST_SIDE_PX);
  return large[large.length - 1] ?? file.image;
}

function cornersOf(file: OpenGeoTiff): [LonLat, LonLat, LonLat, LonLat] {
  const converter = proj4('+proj=longlat +datum=WGS84 +no_defs', file.system.proj4);
  const { xPerColumn, xPerRow, x0, yPerColumn, yPerRow, y0 } = file.affine;
  const corner = (column: number, row: number): LonLat => {
    const [lonDeg, latDeg] = converter.inverse([
      x0 + xPerColumn * column + xPerRow * row,
      y0 + yPerColumn * column + yPerRow * row,
    ]);
    if (!(Math.abs(latDeg) <= 90)) {
      throw new BadInputError(`${file.fileName}: the picture's corners do not lie on the globe.`);
    }
    return [lonDeg, latDeg];
  };
  const { columns, rows } = file;
  return [corner(0, 0), corner(columns, 0), corner(columns, rows), corner(0, rows)];
}

async function thinnedOut(
  file: OpenGeoTiff,
  image: TiffImage,
  side: number,
): Promise<{ widthPx: number; heightPx: number; rgba: Uint8ClampedArray }> {
  const width = image.getWidth();
  const height = image.getHeight();
  const widthPx = Math.ceil(width / side);
  const heightPx = Math.ceil(height / side);
  const sums = new Float32Array(widthPx * heightPx * 4);
  const counts = new Uint16Array(widthPx * heightPx);
  const noData = file.image.getGDALNoData();
  const blockRows = Math.max(1, image.getTileHeight());
  const rowsAtATime = Math.max(1, Math.floor(PIXELS_AT_A_TIME / width / blockRows)) * blockRows;
  let brightest = 255;
  for (let row = 0; row < height; row += rowsAtATime) {
    const past = Math.min(height, row + rowsAtATime);
    const { values, channels, full } = await decodeColours(file, image, [0, row, width, past]);
    brightest = full;
    for (let r = row; r < past; r++) {
      for (let c = 0; c < width; c++) {
        const from = ((r - row) * width + c) * channels;
        const to = Math.floor(r / side) * widthPx + Math.floor(c / side);
        counts[to]++;
        const isHole =
          noData !== null &&
          values[from] === noData &&
          values[from + 1] === noData &&
          values[from + 2] === noData;
        const alpha = isHole ? 0 : channels > 3 ? values[from + 3] : full;
        // Weighted by alpha, so that clear pixels lend no colour to their neighbours.
        sums[to * 4] += values[from] * alpha;
        sums[to * 4 + 1] += values[from + 1] * alpha;
        sums[to * 4 + 2] += values[from + 2] * alpha;
        sums[to * 4 + 3] += alpha;
      }
    }
  }
  const rgba = new Uint8ClampedArray(widthPx * heightPx * 4);
  for (let i = 0; i < counts.length; i++) {
    const alpha = sums[i * 4 + 3];
    if (alpha === 0) continue;
    for (let k = 0; k < 3; k++) rgba[i * 4 + k] = (255 * sums[i * 4 + k]) / alpha / brightest;
    rgba[i * 4 + 3] = (255 * alpha) / counts[i] / brightest;
  }
  return { widthPx, heightPx, rgba };
}

/** Colours of a window, interleaved by pixel; `full` is the value of full brightness. */
async function decodeColours(
  file: OpenGeoTiff,
  image: TiffImage,
  window: number[],
): Promise<{ values: ArrayLike<number>; channels: number; full: number }> {
  try {
    const values = await image.readRGB({ window, interleave: true, enableAlpha: true });
    const pixels = (window[2] - window[0]) * (window[3] - window[1]);
    const isPlainRgb = image.fileDirectory.getValue('PhotometricInterpretation') === 2;
    const full = isPlainRgb ? 2 ** Math.min(16, image.getBitsPerSample(0)) - 1 : 255;
    return { values, channels: Math.max(1, Math.round(values.length / pixels)), full };
  } catch (error) {
    const text = error instanceof Error ? error.message : String(error);
    if (/compression|photometric|not supported|unsupported/i.test(text)) {
      throw new BadInputError(
        `${file.fileName}: the way its colours are stored cannot be read here; save it again as RGB with deflate or LZW compression.`,
      );
    }
    throw cutShort(file.fileName);
  }
}
