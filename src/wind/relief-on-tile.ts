import { type Grid, sampleGrid } from '../numeric/grid.ts';
import type { Relief } from './relief.ts';
import type { ShelterTile } from './shelter-tile.ts';

/**
 * Writes the three coefficients of the relief (see Relief) for each cell of a tile, side by side.
 * @param out from `at` on. Mutates `out`.
 */
export function reliefOnTile(relief: Relief, tile: ShelterTile, out: Float32Array, at: number): void {
  const grids = [relief.eastEast, relief.eastNorth, relief.northNorth].map(
    (values): Grid => ({ ...relief, values }),
  );
  for (let row = 0, i = at; row < tile.rows; row++)
    for (let column = 0; column < tile.columns; column++, i += 3) {
      const x = tile.firstXM + column * tile.cellM;
      for (let k = 0; k < 3; k++) out[i + k] = sampleGrid(grids[k], x, tile.rowYM[row]);
    }
}
