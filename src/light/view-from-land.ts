/**
 * The land as one spot sees it: the altitude of its horizon in every column of the view, and how high it already
 * stands in front of a thing at some distance, so that what is behind a rise is not drawn as if it stood before it.
 * One spot needs no sweep: each column is marched, finely near the spot, where a handbreadth decides.
 */
import { cellCentreX, cellCentreY, type Grid, sampleGrid } from '../numeric/grid.ts';
import type { Eye } from './view-from-pieces.ts';

/** The first strides, metres and at most this share of a ground cell; farther off a stride is this share of the distance. */
const FIRST_STRIDE_M = 0.25;
const STRIDE_OF_CELL = 1 / 16;
const STRIDE_OF_DISTANCE = 1 / 400;

export interface LandInView {
  /** Tangent of the horizon's altitude at the centre of each column, at least 0. */
  readonly tangent: Float64Array;
  /** Tangent of the highest land nearer than a distance, at least 0. */
  before(column: number, distanceM: number): number;
}

/**
 * @param ground elevations, NaN where missing: holes hide nothing, and land beyond the raster is not seen
 * @param gridAzimuthRad of the centre of each column
 */
export function landInView(ground: Grid, eye: Eye, gridAzimuthRad: Float64Array): LandInView {
  const { xM, yM, zM } = eye;
  const west = cellCentreX(ground, 0);
  const east = cellCentreX(ground, ground.columns - 1);
  const north = cellCentreY(ground, 0);
  const south = cellCentreY(ground, ground.rows - 1);
  const farthestM = Math.hypot(Math.max(xM - west, east - xM), Math.max(yM - south, north - yM));
  const strides: number[] = [];
  const shortestM = Math.min(FIRST_STRIDE_M, ground.cellM * STRIDE_OF_CELL);
  for (let d = shortestM; d < farthestM; d += Math.max(shortestM, d * STRIDE_OF_DISTANCE)) strides.push(d);
  const distanceM = Float64Array.from(strides);
  let highestM = Number.NEGATIVE_INFINITY;
  for (const z of ground.values) if (z > highestM) highestM = z;

  /** By column: the highest tangent up to each stride, as far as the land may still rise. */
  const rising = Array.from(gridAzimuthRad, (azimuth) => {
    const sx = Math.sin(azimuth);
    const sy = Math.cos(azimuth);
    const highest: number[] = [];
    let best = 0;
    for (const d of distanceM) {
      const x = xM + sx * d;
      const y = yM + sy * d;
      const onLand = x >= west && x <= east && y >= south && y <= north;
      if (!onLand || (highestM - zM) / d <= best) break;
      const rise = (sampleGrid(ground, x, y) - zM) / d;
      if (rise > best) best = rise;
      highest.push(best);
    }
    return Float64Array.from(highest);
  });

  return {
    tangent: Float64Array.from(rising, (highest) => highest.at(-1) ?? 0),
    before(column, untilM) {
      const highest = rising[column];
      let low = 0;
      let high = highest.length;
      // The first stride that does not end before the distance.
      while (low < high) {
        const middle = (low + high) >> 1;
        if (distanceM[middle] < untilM) low = middle + 1;
        else high = middle;
      }
      return low === 0 ? 0 : highest[low - 1];
    },
  };
}
