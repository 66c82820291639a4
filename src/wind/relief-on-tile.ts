import { type Grid, sampleGrid } from '../numeric/grid.ts';
import { LANES } from './kernel/assembly/layout.ts';
import { type Relief, reliefShare } from './relief.ts';
import type { ShelterTile, WindRay } from './shelter-tile.ts';

/** Three coefficients of the relief (see Relief) for each cell of a tile, interleaved. */
export function reliefOnTile(relief: Relief, tile: ShelterTile): Float32Array {
  const grids = [relief.eastEast, relief.eastNorth, relief.northNorth].map(
    (values): Grid => ({ ...relief, values }),
  );
  const onTile = new Float32Array(3 * tile.columns * tile.rows);
  for (let row = 0, i = 0; row < tile.rows; row++)
    for (let column = 0; column < tile.columns; column++, i += 3) {
      const x = tile.firstXM + column * tile.cellM;
      for (let k = 0; k < 3; k++) onTile[i + k] = sampleGrid(grids[k], x, tile.rowYM[row]);
    }
  return onTile;
}

/**
 * Multiplies what is left of the wind on each cell by what the land does to it: above 1 on a crest.
 * @param out deficits of the tile from `at` on, one float for each lane of a cell; below 0 where the wind is faster than
 * open. Mutates `out`. Hot.
 */
export function applyRelief(onTile: Float32Array, ray: WindRay, out: Float32Array, at: number): void {
  const { upX, upY } = ray;
  for (let i = 0, cell = at; i < onTile.length; i += 3, cell += LANES) {
    const share = reliefShare(upX, upY, onTile[i], onTile[i + 1], onTile[i + 2]);
    for (let lane = cell; lane < cell + LANES; lane++) out[lane] = 1 - (1 - out[lane]) * share;
  }
}
