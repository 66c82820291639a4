import proj4 from 'proj4';
import type { Grid, GridSpec } from '../numeric/grid.ts';
import { cellCount } from '../numeric/grid.ts';
import type { Frame, LonLat } from './frame.ts';
import { toLonLat } from './frame.ts';

/**
 * Where a raster lies in its own system: x = xPerColumn * column + xPerRow * row + x0, and y likewise, with column and
 * row counted from the outer corner of the first pixel, so that pixel (c, r) has its centre at (c + 0.5, r + 0.5).
 */
export interface Affine {
  readonly xPerColumn: number;
  readonly xPerRow: number;
  readonly x0: number;
  readonly yPerColumn: number;
  readonly yPerRow: number;
  readonly y0: number;
}

/** A raster of elevations in any system: row-major float32 metres, NaN in holes. */
export interface SourceRaster {
  readonly columns: number;
  readonly rows: number;
  readonly values: Float32Array;
  readonly affine: Affine;
  /** proj4 definition of its system. */
  readonly system: string;
}

/** Fractional column and row (from the raster's outer corner) of a place in the local frame, metres. */
export type PixelOf = (xM: number, yM: number) => [number, number];

/** The exact way from the local frame to a raster's pixels, through longitude and latitude. */
export function pixelOfLocal(frame: Frame, system: string, affine: Affine, columns: number): PixelOf {
  const converter = proj4('+proj=longlat +datum=WGS84 +no_defs', system);
  const { xPerColumn, xPerRow, x0, yPerColumn, yPerRow, y0 } = affine;
  const determinant = xPerColumn * yPerRow - xPerRow * yPerColumn;
  // A geographic raster may count longitude from 0 to 360.
  const eastEdge = x0 + xPerColumn * columns;
  const past180 = /\+proj=longlat/.test(system) && eastEdge > 180.5;
  return (xM, yM) => {
    const [lonDeg, latDeg]: LonLat = toLonLat(frame, [xM, yM]);
    const [sx, sy] = converter.forward([lonDeg, latDeg]);
    const dx = (past180 && sx < eastEdge - 360 ? sx + 360 : sx) - x0;
    const dy = sy - y0;
    return [(yPerRow * dx - xPerRow * dy) / determinant, (xPerColumn * dy - yPerColumn * dx) / determinant];
  };
}

const LATTICE_CELLS = 16;
const LATTICE_TOLERANCE_PX = 0.005;

/**
 * Lays a raster on the cells of a grid in the local frame, bilinearly between pixel centres, each cell by its centre.
 * A cell is NaN when a pixel that carries weight is a hole, or when its centre lies beyond the raster's outer edge
 * (between the outermost pixel centres and the edge the outermost value holds). Holes are never filled.
 * Source pixels finer than the cells must have been averaged before (`blockMean`), or detail aliases.
 */
export function resampleToFrame(source: SourceRaster, frame: Frame, spec: GridSpec): Grid {
  const exact = pixelOfLocal(frame, source.system, source.affine, source.columns);
  const values = new Float32Array(cellCount(spec));
  const { columns, rows, cellM, westM, northM } = spec;
  // The projection is smooth: it is worked out on a lattice and interpolated inside each lattice square,
  // except where the square's middle shows that this would be off by more than a two-hundredth of a pixel.
  for (let r0 = 0; r0 < rows; r0 += LATTICE_CELLS) {
    const r1 = Math.min(rows, r0 + LATTICE_CELLS);
    for (let c0 = 0; c0 < columns; c0 += LATTICE_CELLS) {
      const c1 = Math.min(columns, c0 + LATTICE_CELLS);
      const west = westM + c0 * cellM;
      const east = westM + c1 * cellM;
      const north = northM - r0 * cellM;
      const south = northM - r1 * cellM;
      const pixelOf = squareInterpolation(exact, west, south, east, north);
      for (let r = r0; r < r1; r++) {
        const yM = northM - (r + 0.5) * cellM;
        for (let c = c0; c < c1; c++) {
          const [column, row] = pixelOf(westM + (c + 0.5) * cellM, yM);
          values[r * columns + c] = samplePixels(source, column, row);
        }
      }
    }
  }
  return { ...spec, values };
}

function squareInterpolation(
  exact: PixelOf,
  west: number,
  south: number,
  east: number,
  north: number,
): PixelOf {
  const nw = exact(west, north);
  const ne = exact(east, north);
  const sw = exact(west, south);
  const se = exact(east, south);
  const inside: PixelOf = (xM, yM) => {
    const u = (xM - west) / (east - west);
    const v = (north - yM) / (north - south);
    const at = (k: 0 | 1): number =>
      (1 - v) * ((1 - u) * nw[k] + u * ne[k]) + v * ((1 - u) * sw[k] + u * se[k]);
    return [at(0), at(1)];
  };
  const middle = exact((west + east) / 2, (south + north) / 2);
  const guess = inside((west + east) / 2, (south + north) / 2);
  const offPx = Math.hypot(middle[0] - guess[0], middle[1] - guess[1]);
  return offPx <= LATTICE_TOLERANCE_PX ? inside : exact;
}

/** Bilinear value at fractional column and row counted from the raster's outer corner. */
function samplePixels(source: SourceRaster, column: number, row: number): number {
  const { columns, rows, values } = source;
  if (!(column >= 0 && row >= 0 && column <= columns && row <= rows)) return Number.NaN;
  const fc = Math.min(columns - 1, Math.max(0, column - 0.5));
  const fr = Math.min(rows - 1, Math.max(0, row - 0.5));
  const c0 = Math.min(Math.floor(fc), Math.max(0, columns - 2));
  const r0 = Math.min(Math.floor(fr), Math.max(0, rows - 2));
  const u = fc - c0;
  const v = fr - r0;
  const i = r0 * columns + c0;
  let sum = 0;
  if (u < 1 && v < 1) sum += (1 - u) * (1 - v) * values[i];
  if (u > 0 && v < 1) sum += u * (1 - v) * values[i + 1];
  if (u < 1 && v > 0) sum += (1 - u) * v * values[i + columns];
  if (u > 0 && v > 0) sum += u * v * values[i + columns + 1];
  return sum;
}

/** Adds blocks of pixels up, so that a fine raster can be thinned out by means while it is read in pieces. */
export interface BlockMean {
  /** Adds one source row, counted from the window's first; NaN is a hole. */
  addRow(row: number, values: ArrayLike<number>, from: number): void;
  /** Means of the blocks; NaN where less than half of a block has data. */
  finish(): Float32Array;
  readonly columns: number;
  readonly rows: number;
}

/**
 * Means over blocks of side x side pixels of a window; the last column and row of blocks may be narrower.
 */
export function blockMean(windowColumns: number, windowRows: number, side: number): BlockMean {
  const columns = Math.ceil(windowColumns / side);
  const rows = Math.ceil(windowRows / side);
  const sums = new Float64Array(columns * rows);
  const counts = new Uint32Array(columns * rows);
  return {
    columns,
    rows,
    addRow(row, values, from) {
      const base = Math.floor(row / side) * columns;
      for (let c = 0; c < windowColumns; c++) {
        const value = values[from + c];
        if (Number.isNaN(value)) continue;
        const block = base + Math.floor(c / side);
        sums[block] += value;
        counts[block]++;
      }
    },
    finish() {
      const means = new Float32Array(columns * rows);
      for (let r = 0; r < rows; r++) {
        const high = Math.min(side, windowRows - r * side);
        for (let c = 0; c < columns; c++) {
          const wide = Math.min(side, windowColumns - c * side);
          const block = r * columns + c;
          means[block] = counts[block] * 2 >= wide * high ? sums[block] / counts[block] : Number.NaN;
        }
      }
      return means;
    },
  };
}
