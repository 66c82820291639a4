import type { GridSpec } from '../numeric/grid.ts';

/** Points spread over a grid: (i, j) stands at x = westM + i * spacingM, y = northM - j * spacingM. */
export interface Stations {
  readonly columns: number;
  readonly rows: number;
  readonly spacingM: number;
  readonly westM: number;
  readonly northM: number;
  /** Index of the first column and row on the whole lattice, which hangs on the ground's north-west corner. */
  readonly firstColumn: number;
  readonly firstRow: number;
}

/**
 * The points of the ground's lattice around a grid's box, so that every cell lies between four. Point (0, 0) of the
 * whole lattice stands half a spacing inside the ground's corner, wherever the grid lies: what is found at a point does
 * not depend on how the cells were cut.
 */
export function stationsOver(ground: GridSpec, grid: GridSpec, spacingM: number): Stations {
  const x0 = ground.westM + spacingM / 2;
  const y0 = ground.northM - spacingM / 2;
  const firstColumn = Math.floor((grid.westM - x0) / spacingM);
  const lastColumn = Math.ceil((grid.westM + grid.columns * grid.cellM - x0) / spacingM);
  const firstRow = Math.floor((y0 - grid.northM) / spacingM);
  const lastRow = Math.ceil((y0 - grid.northM + grid.rows * grid.cellM) / spacingM);
  return {
    columns: lastColumn - firstColumn + 1,
    rows: lastRow - firstRow + 1,
    spacingM,
    westM: x0 + firstColumn * spacingM,
    northM: y0 - firstRow * spacingM,
    firstColumn,
    firstRow,
  };
}
