/**
 * A tile: the block of cells whose shadows are worked out together, small enough that everything kept for one
 * direction stays in the processor's cache.
 */
import { cellCentreX, cellCentreY, type Grid, type GridSpec, sampleGrid } from '../numeric/grid.ts';

/** Cells along a tile's edge. */
export const TILE_EDGE = 64;

export interface ShadowTile extends GridSpec {
  /** Cell (row r, column c) is at r * stride + c of every array of a tile. */
  readonly stride: number;
  /** Distance from one row to the next; a tile may skip rows of its grid. */
  readonly rowM: number;
  readonly cells: number;
  /** Elevation at which light is read, one a cell; NaN where the ground is missing. */
  readonly readingZM: Float64Array;
  /** Lowest and highest of them. */
  readonly lowestM: number;
  readonly highestM: number;
}

/** @param column0,row0 the grid's cell in the tile's north-west corner. */
export function shadowTile(
  grid: GridSpec,
  column0: number,
  row0: number,
  ground: Grid,
  readingHeightM: number,
): ShadowTile {
  const columns = Math.min(TILE_EDGE, grid.columns - column0);
  const rows = Math.min(TILE_EDGE, grid.rows - row0);
  const cells = columns * rows;
  const readingZM = new Float64Array(cells);
  let lowestM = Number.POSITIVE_INFINITY;
  let highestM = Number.NEGATIVE_INFINITY;
  for (let r = 0; r < rows; r++) {
    const y = cellCentreY(grid, row0 + r);
    for (let c = 0; c < columns; c++) {
      const z = sampleGrid(ground, cellCentreX(grid, column0 + c), y) + readingHeightM;
      readingZM[r * columns + c] = z;
      if (z < lowestM) lowestM = z;
      if (z > highestM) highestM = z;
    }
  }
  return {
    columns,
    rows,
    stride: columns,
    rowM: grid.cellM,
    cellM: grid.cellM,
    westM: grid.westM + column0 * grid.cellM,
    northM: grid.northM - row0 * grid.cellM,
    cells,
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

/**
 * The cells of a tile that one thing may shade from one direction, and the metres of path through it; reused from
 * thing to thing. Row r holds cells columnFirst[r] up to but not including columnEnd[r]; rows outside
 * rowFirst..rowEnd - 1 hold none. pathM is set only for the cells named.
 */
export interface Shadow {
  rowFirst: number;
  rowEnd: number;
  readonly columnFirst: Int32Array;
  readonly columnEnd: Int32Array;
  /** One a cell of the tile. */
  readonly pathM: Float32Array;
}

export const emptyShadow = (): Shadow => ({
  rowFirst: 0,
  rowEnd: 0,
  columnFirst: new Int32Array(TILE_EDGE),
  columnEnd: new Int32Array(TILE_EDGE),
  pathM: new Float32Array(TILE_EDGE * TILE_EDGE),
});
