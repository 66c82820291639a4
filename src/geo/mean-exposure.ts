import { cellCentreX, cellCentreY, type Grid, type GridSpec } from '../numeric/grid.ts';
import { horizonSumDeg } from './exposure.ts';

/** Places in an area from which the horizon is looked at. */
const PLACES = 49;

/** Mean of the sums of horizon angles over an area, degrees (see geo/exposure.ts); null where it has no ground. */
export function exposureOf(
  ground: Grid,
  grid: GridSpec,
  mask: Uint8Array,
  convergenceRad: number,
): number | null {
  const cells: number[] = [];
  mask.forEach((inside, cell) => {
    if (inside) cells.push(cell);
  });
  const step = Math.max(1, Math.floor(cells.length / PLACES));
  let [sum, count] = [0, 0];
  for (let i = Math.floor(step / 2); i < cells.length; i += step) {
    const x = cellCentreX(grid, cells[i] % grid.columns);
    const y = cellCentreY(grid, Math.floor(cells[i] / grid.columns));
    const deg = horizonSumDeg(ground, x, y, convergenceRad);
    if (Number.isNaN(deg)) continue;
    sum += deg;
    count++;
  }
  return count > 0 ? sum / count : null;
}
