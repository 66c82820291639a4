import type { GridSpec } from '../numeric/grid.ts';

/** Cell sizes a person can choose from, m. */
export const CELL_SIZES_M = [0.5, 1, 2, 3, 4, 5, 8, 10, 15, 20, 30] as const;

/** Cells that are answered in a few seconds on an ordinary machine, and in well under one. */
const FINE_CELLS = 22_000;
const COARSE_CELLS = 2_200;

/** The finest cell of the list that keeps a box of this size within a number of cells. */
function cellFor(areaM2: number, mostCells: number): number {
  return (
    CELL_SIZES_M.find((cellM) => areaM2 / cellM ** 2 <= mostCells) ?? CELL_SIZES_M[CELL_SIZES_M.length - 1]
  );
}

/**
 * The cell sizes of the passes over a box: coarse first, then what the area allows, or what the person asked for.
 * A coarse pass that is hardly coarser is left out.
 */
export function passCellsM(box: GridSpec, wantedM: number | null): number[] {
  const areaM2 = box.columns * box.rows * box.cellM ** 2;
  const fine = wantedM ?? cellFor(areaM2, FINE_CELLS);
  const coarse = cellFor(areaM2, COARSE_CELLS);
  return coarse >= fine * 1.5 ? [coarse, fine] : [fine];
}
