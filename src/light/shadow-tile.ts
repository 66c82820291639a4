/**
 * A tile: the block of cells whose shadows are worked out together, small enough that everything kept for one
 * direction stays in the processor's cache.
 */

import { cellCentreX, cellCentreY, type Grid, type GridSpec, sampleGrid } from '../numeric/grid.ts';
import { EDGE } from './kernel/assembly/layout.ts';

export interface ShadowTile extends GridSpec {
  /** Cell (row r, column c) is at r * stride + c of every array of a tile. */
  readonly stride: number;
  /** Distance from one row to the next; a tile may skip rows of its grid. */
  readonly rowM: number;
  /** Row r of the tile is row gridRow0 + r * gridRowStep of the grid, whose north edge this is. */
  readonly gridNorthM: number;
  readonly gridRow0: number;
  readonly gridRowStep: number;
  /** Elevation at which light is read, stride * rows; NaN where the ground is missing. */
  readonly readingZM: Float64Array;
  /** Lowest and highest of them. */
  readonly lowestM: number;
  readonly highestM: number;
}

/** Every step-th row of a grid from `first` on; a field is shared out among threads by rows in turn. */
export interface RowChoice {
  readonly first: number;
  readonly step: number;
}

export const ALL_ROWS: RowChoice = { first: 0, step: 1 };

/** How many rows of the grid are chosen. */
export const chosenRows = (grid: GridSpec, { first, step }: RowChoice): number =>
  Math.max(0, Math.ceil((grid.rows - first) / step));

/** @param column0,row0 the grid's column, and which of the chosen rows, in the tile's north-west corner. */
export function shadowTile(
  grid: GridSpec,
  choice: RowChoice,
  column0: number,
  row0: number,
  ground: Grid,
  readingHeightM: number,
): ShadowTile {
  const columns = Math.min(EDGE, grid.columns - column0);
  const rows = Math.min(EDGE, chosenRows(grid, choice) - row0);
  const stride = (columns + 3) & ~3;
  const rowM = choice.step * grid.cellM;
  const firstRow = choice.first + row0 * choice.step;
  // Its first row's centre is that of the grid's row; a row is as thick as rows lie apart.
  const northM = grid.northM - (firstRow + 0.5) * grid.cellM + rowM / 2;
  const readingZM = new Float64Array(stride * rows).fill(Number.NaN);
  let lowestM = Number.POSITIVE_INFINITY;
  let highestM = Number.NEGATIVE_INFINITY;
  for (let r = 0; r < rows; r++) {
    const y = cellCentreY(grid, firstRow + r * choice.step);
    for (let c = 0; c < columns; c++) {
      const z = sampleGrid(ground, cellCentreX(grid, column0 + c), y) + readingHeightM;
      readingZM[r * stride + c] = z;
      if (z < lowestM) lowestM = z;
      if (z > highestM) highestM = z;
    }
  }
  return {
    columns,
    rows,
    stride,
    rowM,
    gridNorthM: grid.northM,
    gridRow0: firstRow,
    gridRowStep: choice.step,
    cellM: grid.cellM,
    westM: grid.westM + column0 * grid.cellM,
    northM,
    readingZM,
    lowestM,
    highestM,
  };
}

/** A direction towards the sun or a point of the sky, in the grid's axes (x east, y north along the grid, z up). */
export interface RayDirection {
  /** Unit vector. */
  readonly ux: number;
  readonly uy: number;
  readonly uz: number;
  /** Unit vector in plan. */
  readonly sx: number;
  readonly sy: number;
  readonly tanAltitude: number;
  readonly cosAltitude: number;
}

/** @param azimuthRad clockwise from true north; @param convergenceRad true north to grid north, clockwise. */
export function rayDirection(altitudeRad: number, azimuthRad: number, convergenceRad: number): RayDirection {
  const gridAzimuthRad = azimuthRad - convergenceRad;
  const cosAltitude = Math.cos(altitudeRad);
  const sx = Math.sin(gridAzimuthRad);
  const sy = Math.cos(gridAzimuthRad);
  return {
    ux: sx * cosAltitude,
    uy: sy * cosAltitude,
    uz: Math.sin(altitudeRad),
    sx,
    sy,
    tanAltitude: Math.tan(altitudeRad),
    cosAltitude,
  };
}
