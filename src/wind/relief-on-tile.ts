import type { Relief } from './relief.ts';
import type { ShelterTile } from './shelter-tile.ts';

/** Which two of so many nodes a place along an axis lies between, and how far from the first towards the second. */
interface Between {
  readonly first: Int32Array;
  readonly second: Int32Array;
  readonly share: Float64Array;
}

/** @param places of the cells, in nodes; beyond the outermost nodes the outermost holds. */
function between(places: Float64Array, nodes: number): Between {
  const held = places.map((place) => Math.min(nodes - 1, Math.max(0, place)));
  const first = Int32Array.from(held, (place) => Math.min(Math.floor(place), Math.max(0, nodes - 2)));
  return {
    first,
    second: first.map((node) => Math.min(node + 1, nodes - 1)),
    share: held.map((place, i) => place - first[i]),
  };
}

/**
 * Writes the three coefficients of the relief (see Relief) for each cell of a tile, side by side, read between the
 * relief's own cells as `sampleGrid` reads; where a cell lies is worked out once a row and once a column.
 * @param out from `at` on. Mutates `out`.
 */
export function reliefOnTile(relief: Relief, tile: ShelterTile, out: Float32Array, at: number): void {
  const { columns, rows, cellM, westM, northM, eastEast, eastNorth, northNorth } = relief;
  const layers = [eastEast, eastNorth, northNorth];
  const eastwards = Float64Array.from(
    { length: tile.columns },
    (_, column) => (tile.firstXM + column * tile.cellM - westM) / cellM - 0.5,
  );
  const across = between(eastwards, columns);
  const down = between(
    tile.rowYM.map((yM) => (northM - yM) / cellM - 0.5),
    rows,
  );
  for (const [k, values] of layers.entries())
    for (let row = 0, i = at + k; row < tile.rows; row++) {
      const above = down.first[row] * columns;
      const below = down.second[row] * columns;
      const v = down.share[row];
      for (let column = 0; column < tile.columns; column++, i += 3) {
        const [west, east, u] = [across.first[column], across.second[column], across.share[column]];
        const upper = values[above + west] + u * (values[above + east] - values[above + west]);
        const lower = values[below + west] + u * (values[below + east] - values[below + west]);
        out[i] = upper + v * (lower - upper);
      }
    }
}
