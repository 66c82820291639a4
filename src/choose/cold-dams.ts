import type { LocalXY } from '../geo/frame.ts';
import type { GridSpec } from '../numeric/grid.ts';

/** How cold air runs over the cells of a grid: as `Drainage` has it. */
export interface AirRun {
  readonly runsTo: Int32Array;
  readonly upslopeM2: Float64Array;
}

/**
 * Marks every cell that a line passes through, side by side: where it goes from one cell to the next across a corner, one
 * of the two beside that corner as well, for what runs over a grid runs across corners. Mutates `mask`.
 */
export function markLine(grid: GridSpec, line: readonly LocalXY[], mask: Uint8Array): void {
  const { columns, rows, cellM, westM, northM } = grid;
  const mark = (column: number, row: number): void => {
    if (column >= 0 && row >= 0 && column < columns && row < rows) mask[row * columns + column] = 1;
  };
  for (let i = 1; i < line.length; i++) {
    const [ax, ay] = line[i - 1];
    const [bx, by] = line[i];
    const steps = Math.max(1, Math.ceil((4 * Math.hypot(bx - ax, by - ay)) / cellM));
    let before: readonly [number, number] | null = null;
    for (let k = 0; k <= steps; k++) {
      const column = Math.floor((ax + ((bx - ax) * k) / steps - westM) / cellM);
      const row = Math.floor((northM - (ay + ((by - ay) * k) / steps)) / cellM);
      mark(column, row);
      if (before && before[0] !== column && before[1] !== row) mark(column, before[1]);
      before = [column, row];
    }
  }
}
