import { BadInputError } from '../../units/bad-input.ts';
import type { Affine, SourceRaster } from '../raster.ts';
import { blockMean } from '../raster.ts';
import { LENGTH_UNIT_M } from './geokeys.ts';
import { cutShort, type OpenGeoTiff } from './geotiff-open.ts';

/** Columns and rows of a raster, the last ones not included. */
export interface PixelWindow {
  readonly column: number;
  readonly row: number;
  readonly pastColumn: number;
  readonly pastRow: number;
}

/** Elevations that no dry land on Earth has, metres; beyond them a value is a hole that the file did not declare. */
const LOWEST_M = -1000;
const HIGHEST_M = 9000;
/** Pixels decoded at a time, so that a large window never lies in memory at full size. */
const PIXELS_AT_A_TIME = 4e6;

/**
 * Elevations of a window of the first band, metres, holes as NaN, averaged over blocks of side x side pixels.
 * Honours the declared no-data value, scale and offset, and vertical units of feet.
 */
export async function readElevations(
  file: OpenGeoTiff,
  window: PixelWindow,
  side: number,
): Promise<SourceRaster> {
  const { image } = file;
  const toMetres = await elevationReader(file);
  const width = window.pastColumn - window.column;
  const height = window.pastRow - window.row;
  const mean = blockMean(width, height, side);
  const rowMetres = new Float32Array(width);
  const blockRows = Math.max(1, image.getTileHeight());
  const rowsAtATime = Math.max(1, Math.floor(PIXELS_AT_A_TIME / width / blockRows)) * blockRows;
  let row = window.row;
  while (row < window.pastRow) {
    // Pieces end on the file's own rows of tiles, so that no tile is decoded twice.
    const past = Math.min(window.pastRow, (Math.floor(row / blockRows) * blockRows || 0) + rowsAtATime);
    const raw = await decode(file, [window.column, row, window.pastColumn, past]);
    for (let r = row; r < past; r++) {
      for (let c = 0; c < width; c++) rowMetres[c] = toMetres(raw[(r - row) * width + c]);
      mean.addRow(r - window.row, rowMetres, 0);
    }
    row = past;
  }
  return {
    columns: mean.columns,
    rows: mean.rows,
    values: mean.finish(),
    affine: windowAffine(file.affine, window, side),
    system: file.system.proj4,
  };
}

async function decode(file: OpenGeoTiff, window: number[]): Promise<ArrayLike<number>> {
  try {
    const bands = await file.image.readRasters({ window, samples: [0], interleave: false });
    return bands[0];
  } catch (error) {
    const text = error instanceof Error ? error.message : String(error);
    if (/compression|not supported|unsupported/i.test(text)) {
      throw new BadInputError(
        `${file.fileName}: its compression cannot be read here; save it again with deflate or LZW compression.`,
      );
    }
    throw cutShort(file.fileName);
  }
}

const windowAffine = (affine: Affine, window: PixelWindow, side: number): Affine => ({
  xPerColumn: affine.xPerColumn * side,
  xPerRow: affine.xPerRow * side,
  x0: affine.x0 + affine.xPerColumn * window.column + affine.xPerRow * window.row,
  yPerColumn: affine.yPerColumn * side,
  yPerRow: affine.yPerRow * side,
  y0: affine.y0 + affine.yPerColumn * window.column + affine.yPerRow * window.row,
});

async function elevationReader(file: OpenGeoTiff): Promise<(raw: number) => number> {
  const { image } = file;
  const noData = image.getGDALNoData();
  // A float32 file may spell its no-data value with more digits than the values themselves carry.
  const noData32 = noData === null ? null : Math.fround(noData);
  const tags = (await image.getGDALMetadata(0)) ?? {};
  const scale = Number(tags.SCALE ?? 1) || 1;
  const offset = Number(tags.OFFSET ?? 0) || 0;
  const unitM = verticalUnitM(file, String(tags.UNITTYPE ?? ''));
  return (raw) => {
    if (raw === noData || raw === noData32 || raw === -9999) return Number.NaN;
    const metres = (raw * scale + offset) * unitM;
    return metres > LOWEST_M && metres < HIGHEST_M ? metres : Number.NaN;
  };
}

/** Vertical systems in feet by EPSG code: NAVD88 in US survey feet and in feet, NGVD29 in US survey feet. */
const FOOT_SYSTEMS: Readonly<Record<number, number>> = {
  6360: LENGTH_UNIT_M[9003],
  8228: LENGTH_UNIT_M[9002],
  5702: LENGTH_UNIT_M[9003],
};

/** Metres in the file's unit of height; metres when it does not say. */
function verticalUnitM(file: OpenGeoTiff, unitName: string): number {
  const named = unitName.trim().toLowerCase();
  if (/^(us survey foot|us-ft|ftus|us survey feet)$/.test(named)) return LENGTH_UNIT_M[9003];
  if (/^(ft|foot|feet|international foot)$/.test(named)) return LENGTH_UNIT_M[9002];
  if (/^(m|metre|meter|metres|meters)$/.test(named)) return 1;
  const units = LENGTH_UNIT_M[Number(file.geoKeys.VerticalUnitsGeoKey)];
  if (units) return units;
  const system = Number(file.geoKeys.VerticalCSTypeGeoKey ?? file.geoKeys.VerticalGeoKey);
  return FOOT_SYSTEMS[system] ?? 1;
}
