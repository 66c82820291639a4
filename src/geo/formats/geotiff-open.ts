import { fromArrayBuffer, type GeoTIFF } from 'geotiff';
import { BadInputError } from '../../units/bad-input.ts';
import type { Affine } from '../raster.ts';
import { checkFileSize } from './file-size.ts';
import { type GeoKeys, type RasterSystem, systemOfGeoKeys } from './geokeys.ts';

/** One image of the file, as the library hands it over. */
export type TiffImage = Awaited<ReturnType<GeoTIFF['getImage']>>;

/** A GeoTIFF whose header has been read and found whole. */
export interface OpenGeoTiff {
  readonly fileName: string;
  readonly image: TiffImage;
  /** Smaller copies of the same image, largest first. */
  readonly overviews: readonly TiffImage[];
  readonly columns: number;
  readonly rows: number;
  readonly affine: Affine;
  readonly system: RasterSystem;
  readonly geoKeys: GeoKeys;
}

/** @throws BadInputError for a file that is empty, too large, no TIFF, cut short, or without a known place on Earth. */
export async function openGeoTiff(fileName: string, bytes: ArrayBuffer): Promise<OpenGeoTiff> {
  checkFileSize(fileName, bytes.byteLength);
  if (!startsAsTiff(bytes))
    throw new BadInputError(`${fileName}: this is not a TIFF file; expected a GeoTIFF.`);
  const images = await readImages(fileName, bytes);
  const [image, ...others] = images;
  await checkWhole(fileName, image, bytes.byteLength);
  const geoKeys: GeoKeys = image.getGeoKeys() ?? {};
  const affine = affineOf(image, geoKeys.GTRasterTypeGeoKey === 2);
  if (!affine) {
    throw new BadInputError(
      `${fileName}: the picture does not say where on Earth it lies; expected a GeoTIFF with a georeference.`,
    );
  }
  return {
    fileName,
    image,
    overviews: others
      .filter((other) => (Number(other.fileDirectory.getValue('NewSubfileType') ?? 0) & 5) === 1)
      .sort((a, b) => b.getWidth() - a.getWidth()),
    columns: image.getWidth(),
    rows: image.getHeight(),
    affine,
    system: systemOfGeoKeys(geoKeys, fileName),
    geoKeys,
  };
}

function startsAsTiff(bytes: ArrayBuffer): boolean {
  if (bytes.byteLength < 8) return false;
  const [a, b, c, d] = new Uint8Array(bytes, 0, 4);
  const version = a === 0x49 && b === 0x49 ? c + 256 * d : a === 0x4d && b === 0x4d ? 256 * c + d : 0;
  return version === 42 || version === 43;
}

async function readImages(fileName: string, bytes: ArrayBuffer): Promise<TiffImage[]> {
  try {
    const tiff = await fromArrayBuffer(bytes);
    const images: TiffImage[] = [];
    for (let i = 0; i < (await tiff.getImageCount()); i++) images.push(await tiff.getImage(i));
    if (images.length > 0) return images;
  } catch {
    // The library's own words (offsets, bounds) say nothing to a person.
  }
  throw cutShort(fileName);
}

/** The error for a file that ends before its data does. */
export const cutShort = (fileName: string): BadInputError =>
  new BadInputError(`${fileName}: the file is cut short or damaged; copy or download it again.`);

async function checkWhole(fileName: string, image: TiffImage, byteLength: number): Promise<void> {
  const kind = image.isTiled ? 'Tile' : 'Strip';
  let offsets: ArrayLike<unknown>;
  let counts: ArrayLike<unknown>;
  try {
    offsets = ((await image.fileDirectory.loadValue(`${kind}Offsets`)) ?? []) as ArrayLike<unknown>;
    counts = ((await image.fileDirectory.loadValue(`${kind}ByteCounts`)) ?? []) as ArrayLike<unknown>;
  } catch {
    throw cutShort(fileName);
  }
  for (let i = 0; i < offsets.length; i++) {
    if (Number(offsets[i]) + Number(counts[i] ?? 0) > byteLength) throw cutShort(fileName);
  }
}

/**
 * The raster's place from ModelTransformation or from one tie point and the pixel scale. Where a file says that a
 * value stands for a point (PixelIsPoint), its tie point is the first pixel's centre: half a pixel is taken off.
 */
function affineOf(image: TiffImage, pixelIsPoint: boolean): Affine | null {
  const matrix = image.fileDirectory.getValue('ModelTransformation') as ArrayLike<number> | undefined;
  const tie = image.fileDirectory.getValue('ModelTiepoint') as ArrayLike<number> | undefined;
  const scale = image.fileDirectory.getValue('ModelPixelScale') as ArrayLike<number> | undefined;
  let affine: Affine | null = null;
  if (tie && tie.length === 6 && scale && scale[0] > 0 && scale[1] !== 0) {
    const yPerRow = -Math.abs(scale[1]);
    affine = {
      xPerColumn: scale[0],
      xPerRow: 0,
      x0: tie[3] - tie[0] * scale[0],
      yPerColumn: 0,
      yPerRow,
      y0: tie[4] - tie[1] * yPerRow,
    };
  } else if (matrix && matrix.length === 16) {
    affine = {
      xPerColumn: matrix[0],
      xPerRow: matrix[1],
      x0: matrix[3],
      yPerColumn: matrix[4],
      yPerRow: matrix[5],
      y0: matrix[7],
    };
  }
  if (!affine) return null;
  const { xPerColumn, xPerRow, x0, yPerColumn, yPerRow, y0 } = affine;
  if (!(Math.abs(xPerColumn * yPerRow - xPerRow * yPerColumn) > 0)) return null;
  if (!pixelIsPoint) return affine;
  return { ...affine, x0: x0 - (xPerColumn + xPerRow) / 2, y0: y0 - (yPerColumn + yPerRow) / 2 };
}
