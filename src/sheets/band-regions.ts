import { contours } from 'd3-contour';
import type { Grid } from '../numeric/grid.ts';
import type { CellPoint } from '../numeric/level-lines.ts';
import type { BandSet } from '../units/bands.ts';

/** Ground at or above a band's lower limit: closed rings, outer and holes alike (even-odd). */
export interface BandRegion {
  readonly band: number;
  readonly rings: readonly (readonly CellPoint[])[];
}

/** The part of a raster inside a window of whole cells, averaged over squares of `factor` cells; NaN where most is. */
export function coarserPart(
  grid: Grid,
  window: { firstColumn: number; firstRow: number; columns: number; rows: number },
  factor: number,
): Grid {
  const columns = Math.ceil(window.columns / factor);
  const rows = Math.ceil(window.rows / factor);
  const values = new Float32Array(columns * rows);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      let sum = 0;
      let count = 0;
      let cells = 0;
      for (let dr = 0; dr < factor; dr++) {
        const r = window.firstRow + row * factor + dr;
        if (r >= grid.rows) continue;
        for (let dc = 0; dc < factor; dc++) {
          const c = window.firstColumn + column * factor + dc;
          if (c >= grid.columns) continue;
          cells++;
          const value = grid.values[r * grid.columns + c];
          if (Number.isNaN(value)) continue;
          sum += value;
          count++;
        }
      }
      values[row * columns + column] = count * 2 >= cells && count > 0 ? sum / count : Number.NaN;
    }
  }
  return {
    columns,
    rows,
    cellM: grid.cellM * factor,
    westM: grid.westM + window.firstColumn * grid.cellM,
    northM: grid.northM - window.firstRow * grid.cellM,
    values,
  };
}

/**
 * The bands of a raster as regions, lowest first, each holding all higher ones: painted in this order they show the
 * bands. A band without ground is left out. Limits are drawn by linear interpolation between cell centres.
 */
export function bandRegions(grid: Grid, bands: BandSet): BandRegion[] {
  const trace = contours().size([grid.columns, grid.rows]).smooth(true);
  // The types ask for number[]; the library only indexes and reads the length.
  const values = grid.values as unknown as number[];
  return bands.bands
    .map((band, index) => {
      // The lowest band takes everything that has a value.
      const limit = index === 0 ? -Number.MAX_VALUE : band.from;
      const { coordinates } = trace.contour(values, limit);
      return { band: index, rings: coordinates.flat() as unknown as CellPoint[][] };
    })
    .filter((region) => region.rings.length > 0);
}
