import { type Grid, gridCovering } from '../numeric/grid.ts';
import { BadInputError } from '../units/bad-input.ts';
import { type OpenGeoTiff, openGeoTiff } from './formats/geotiff-open.ts';
import { type PixelWindow, readElevations } from './formats/geotiff-read.ts';
import type { Frame } from './frame.ts';
import type { LocalBox } from './local-box.ts';
import { widenedBox } from './local-box.ts';
import { type PixelOf, pixelOfLocal, resampleToFrame } from './raster.ts';

export interface GroundRequest {
  readonly fileName: string;
  readonly bytes: ArrayBuffer;
  readonly frame: Frame;
  /** Local box that must be covered, metres; the raster is read with a margin around it. */
  readonly box: LocalBox;
}
export interface GroundResult {
  readonly ground: Grid;
  /** What the file said of itself, for the panel: its system, cell size, size. */
  readonly description: string;
}

const CELLS_M = [0.25, 0.5, 1, 2, 2.5, 5, 10, 20, 25, 50, 100, 200];
const MOST_CELLS = 2e6;

/**
 * Elevations of a GeoTIFF, laid on the site's frame with two cells to spare around the box. Cells are a third of the
 * file's pixels, so that bilinear sampling of the result stays true to the file, or as coarse as keeps them
 * under two million; then the file's pixels are averaged. Holes, and ground beyond the file, stay NaN.
 * @throws BadInputError when the file cannot be read or does not touch the box.
 */
export async function readGround(request: GroundRequest): Promise<GroundResult> {
  const { fileName, frame, box } = request;
  const file = await openGeoTiff(fileName, request.bytes);
  const pixelOf = pixelOfLocal(frame, file.system.proj4, file.affine, file.columns);
  const pixelM = pixelSizeM(pixelOf, box);
  const cellM = cellSizeM(pixelM, box);
  const side = Math.max(1, Math.round(cellM / pixelM));
  const spec = gridCovering(widenedBox(box, 2 * cellM), cellM);
  const window = windowOver(pixelOf, widenedBox(box, 4 * cellM + 2 * side * pixelM), file, side);
  if (!window) throw doesNotTouch(file);
  const source = await readElevations(file, window, side);
  const ground = resampleToFrame(source, frame, spec);
  const covered = coveredShare(ground);
  if (covered === 0) throw doesNotTouch(file);
  const part = covered < 0.995 ? `, covers ${Math.max(1, Math.floor(covered * 100))} % of the site` : '';
  return {
    ground,
    description: `${file.system.name}, ${file.columns} × ${file.rows} cells of ${roundedM(pixelM)} m${part}`,
  };
}

const doesNotTouch = (file: OpenGeoTiff): BadInputError =>
  new BadInputError(
    `${file.fileName}: the raster (${file.system.name}) has no ground where the site lies; expected one that covers the site.`,
  );

const roundedM = (valueM: number): string => String(Number(valueM.toPrecision(3)));

/** Side of a pixel on the ground at the middle of the box, metres. */
function pixelSizeM(pixelOf: PixelOf, box: LocalBox): number {
  const xM = (box.west + box.east) / 2;
  const yM = (box.south + box.north) / 2;
  const [c0, r0] = pixelOf(xM - 5, yM - 5);
  const [c1, r1] = pixelOf(xM + 5, yM - 5);
  const [c2, r2] = pixelOf(xM - 5, yM + 5);
  const pixelsIn100M2 = Math.abs((c1 - c0) * (r2 - r0) - (c2 - c0) * (r1 - r0));
  return pixelsIn100M2 > 0 ? 10 / Math.sqrt(pixelsIn100M2) : 1;
}

function cellSizeM(pixelM: number, box: LocalBox): number {
  const areaM2 = Math.max(1, (box.east - box.west) * (box.north - box.south));
  const least = Math.max(pixelM / 3, Math.sqrt(areaM2 / MOST_CELLS));
  return CELLS_M.find((cellM) => cellM >= least * 0.999) ?? least;
}

/** Pixels that the box needs, whole blocks of the averaging; null when the raster lies elsewhere. */
function windowOver(pixelOf: PixelOf, box: LocalBox, file: OpenGeoTiff, side: number): PixelWindow | null {
  let west = Number.POSITIVE_INFINITY;
  let north = Number.POSITIVE_INFINITY;
  let east = Number.NEGATIVE_INFINITY;
  let south = Number.NEGATIVE_INFINITY;
  // The box's outline bends in another system: its sides are followed, not only its corners.
  const steps = 8;
  for (let i = 0; i <= steps; i++) {
    for (let j = 0; j <= steps; j++) {
      const xM = box.west + ((box.east - box.west) * i) / steps;
      const yM = box.south + ((box.north - box.south) * j) / steps;
      const [column, row] = pixelOf(xM, yM);
      if (!Number.isFinite(column) || !Number.isFinite(row)) continue;
      west = Math.min(west, column);
      east = Math.max(east, column);
      north = Math.min(north, row);
      south = Math.max(south, row);
    }
  }
  // Blocks start at multiples of their side, so that a moved box reads the same means.
  const window = {
    column: Math.max(0, Math.floor(west / side) * side),
    row: Math.max(0, Math.floor(north / side) * side),
    pastColumn: Math.min(file.columns, Math.ceil(east / side) * side),
    pastRow: Math.min(file.rows, Math.ceil(south / side) * side),
  };
  return window.column < window.pastColumn && window.row < window.pastRow ? window : null;
}

function coveredShare(grid: Grid): number {
  let covered = 0;
  for (const value of grid.values) if (!Number.isNaN(value)) covered++;
  return covered / grid.values.length;
}
