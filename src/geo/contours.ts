import { contours as marchingSquares } from 'd3-contour';
import type { Grid } from '../numeric/grid.ts';
import type { LocalXY } from './frame.ts';

/** A line of equal elevation, in local metres. A closed one repeats its first point. */
export interface ContourLine {
  readonly elevationM: number;
  readonly line: LocalXY[];
}

const INTERVALS_M = [0.25, 0.5, 1, 2, 5, 10, 20, 50, 100, 200];

/** Contour interval that draws some twelve lines over the ground's whole range, metres. */
export function contourIntervalM(grid: Grid, linesWanted = 12): number {
  const [low, high] = elevationRangeM(grid);
  const wanted = (high - low) / linesWanted;
  return INTERVALS_M.find((interval) => interval >= wanted) ?? INTERVALS_M[INTERVALS_M.length - 1];
}

function elevationRangeM(grid: Grid): [number, number] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of grid.values) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return low <= high ? [low, high] : [0, 0];
}

/**
 * Contour lines through the cell centres (marching squares). Lines end at the raster's edge and at holes.
 */
export function contourLines(grid: Grid, intervalM: number): ContourLine[] {
  const [low, high] = elevationRangeM(grid);
  const squares = marchingSquares().size([grid.columns, grid.rows]);
  const lines: ContourLine[] = [];
  for (let k = Math.ceil(low / intervalM); k * intervalM <= high; k++) {
    const elevationM = k * intervalM;
    // The types ask for number[]; the library only indexes and reads the length.
    const area = squares.contour(grid.values as unknown as number[], elevationM);
    for (const rings of area.coordinates) {
      for (const ring of rings) {
        for (const piece of piecesOnGround(grid, ring, elevationM)) {
          lines.push({ elevationM, line: piece.map(([x, y]) => toMetres(grid, x, y)) });
        }
      }
    }
  }
  return lines;
}

const toMetres = (grid: Grid, x: number, y: number): LocalXY => [
  grid.westM + x * grid.cellM,
  grid.northM - y * grid.cellM,
];

/**
 * Marching squares closes its rings along the raster's edge and around holes. A ring vertex belongs to the contour
 * only where it lies between two cell centres that both have ground; the rest is cut away.
 * Ring coordinates: cell (c, r) has its centre at (c + 0.5, r + 0.5).
 */
function piecesOnGround(grid: Grid, ring: number[][], elevationM: number): number[][][] {
  const open = ring.slice(0, -1);
  const keep = open.map(([x, y]) => betweenGround(grid, x - 0.5, y - 0.5, elevationM));
  const firstCut = keep.indexOf(false);
  if (firstCut < 0) return [ring];
  const pieces: number[][][] = [];
  let piece: number[][] = [];
  for (let k = 1; k <= open.length; k++) {
    const i = (firstCut + k) % open.length;
    if (keep[i]) piece.push(open[i]);
    else {
      if (piece.length > 1) pieces.push(piece);
      piece = [];
    }
  }
  return pieces;
}

function betweenGround(grid: Grid, column: number, row: number, elevationM: number): boolean {
  if (column < 0 || row < 0 || column > grid.columns - 1 || row > grid.rows - 1) return false;
  const c0 = Math.floor(column);
  const r0 = Math.floor(row);
  const c1 = Math.ceil(column);
  const r1 = Math.ceil(row);
  const here = grid.values[r0 * grid.columns + c0];
  // Beside a hole the library puts its vertex on the last cell's centre, whatever stands there.
  if (c0 === c1 && r0 === r1) return Math.abs(here - elevationM) <= 1e-6 * Math.max(1, Math.abs(elevationM));
  return Number.isFinite(here + grid.values[r1 * grid.columns + c1]);
}
