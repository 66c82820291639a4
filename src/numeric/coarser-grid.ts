import {
  boxOfGrid,
  cellCentreX,
  cellCentreY,
  cellCount,
  type Grid,
  gridCovering,
  sampleGrid,
} from './grid.ts';

/** A grid on cells of at most so many, each with the value at its centre; itself where it has no more. */
export function coarserGrid(grid: Grid, mostCells: number): Grid {
  if (cellCount(grid) <= mostCells) return grid;
  const coarseM = grid.cellM * Math.ceil(Math.sqrt(cellCount(grid) / mostCells));
  const spec = gridCovering(boxOfGrid(grid), coarseM);
  const values = Float32Array.from({ length: cellCount(spec) }, (_, cell) =>
    sampleGrid(
      grid,
      cellCentreX(spec, cell % spec.columns),
      cellCentreY(spec, Math.floor(cell / spec.columns)),
    ),
  );
  return { ...spec, values };
}
