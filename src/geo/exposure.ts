import { type Grid, sampleGrid } from '../numeric/grid.ts';

/** The eight points of the compass. */
const DIRECTIONS = 8;
/** The horizon is looked for no farther than this: beyond, hills say little of the wind of a place (common practice, no source). */
const REACH_M = 2000;
/** Nor nearer: what rises closer by is a bank, no hill, and the rounding of a raster's summit (our choice). */
const FROM_M = 50;
/** Steps grow with the distance to this share of it, and are never shorter than a cell. */
const STEP_SHARE = 0.05;

/**
 * How open to the wind the shape of the land leaves a place: the sum of the angles to the horizon towards the eight
 * points of the compass, degrees (the forestry index, Malcolm & Studholme 1972, as a public encyclopedia describes it).
 * 0: open all round; larger: the land shelters; below 0: the land falls away, as on a hilltop. NaN without ground.
 * @param x,y place in the frame of the ground, metres. @param convergenceRad from true to grid north, clockwise.
 */
export function horizonSumDeg(ground: Grid, x: number, y: number, convergenceRad: number): number {
  const own = sampleGrid(ground, x, y);
  const west = ground.westM;
  const east = west + ground.columns * ground.cellM;
  const north = ground.northM;
  const south = north - ground.rows * ground.cellM;
  let sum = 0;
  for (let k = 0; k < DIRECTIONS; k++) {
    const azimuth = (k * 2 * Math.PI) / DIRECTIONS - convergenceRad;
    const [ux, uy] = [Math.sin(azimuth), Math.cos(azimuth)];
    let highest = Number.NEGATIVE_INFINITY;
    for (let d = FROM_M; d <= REACH_M; d += Math.max(ground.cellM, STEP_SHARE * d)) {
      const [px, py] = [x + d * ux, y + d * uy];
      if (px < west || px > east || py < south || py > north) break;
      const rise = (sampleGrid(ground, px, py) - own) / d;
      if (rise > highest) highest = rise;
    }
    if (highest > Number.NEGATIVE_INFINITY) sum += Math.atan(highest);
  }
  return Number.isNaN(own) ? Number.NaN : (sum * 180) / Math.PI;
}
