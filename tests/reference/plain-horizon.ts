/**
 * The plain slow horizon and the plain slow path through canopy: from one point along one direction, step by step to
 * the edge of the raster, no stack, no pyramid, no table. And made-up land to look at.
 */
import type { Grid, GridSpec } from '../../src/numeric/grid.ts';
import { cellCentreX, cellCentreY, sampleGrid } from '../../src/numeric/grid.ts';
import { seededRandom } from '../../src/numeric/random.ts';

/** A raster of a function of x and y, its centre at (0, 0). */
export function gridOf(
  columns: number,
  rows: number,
  cellM: number,
  value: (xM: number, yM: number) => number,
): Grid {
  const spec: GridSpec = { columns, rows, cellM, westM: (-columns * cellM) / 2, northM: (rows * cellM) / 2 };
  const values = new Float32Array(columns * rows);
  for (let r = 0; r < rows; r++)
    for (let c = 0; c < columns; c++)
      values[r * columns + c] = value(cellCentreX(spec, c), cellCentreY(spec, r));
  return { ...spec, values };
}

/** Rolling land: a slope and a dozen waves of random direction, 40 to 400 m long, the longer the higher. */
export function rollingLand(seed: number): (xM: number, yM: number) => number {
  const random = seededRandom(seed);
  const east = 0.3 * (random() - 0.5);
  const north = 0.3 * (random() - 0.5);
  const waves = Array.from({ length: 12 }, (_, k) => {
    const lengthM = 40 * 10 ** (k / 11);
    const turn = 2 * Math.PI * random();
    return {
      x: ((2 * Math.PI) / lengthM) * Math.cos(turn),
      y: ((2 * Math.PI) / lengthM) * Math.sin(turn),
      phase: 2 * Math.PI * random(),
      heightM: 0.02 * lengthM * (0.5 + random()),
    };
  });
  return (xM, yM) =>
    waves.reduce(
      (z, wave) => z + wave.heightM * Math.sin(wave.x * xM + wave.y * yM + wave.phase),
      200 + east * xM + north * yM,
    );
}

/** Whether a point lies within the hull of a raster's cell centres. */
function withinCentres(grid: GridSpec, xM: number, yM: number): boolean {
  const u = (xM - grid.westM) / grid.cellM - 0.5;
  const v = (grid.northM - yM) / grid.cellM - 0.5;
  return u >= 0 && v >= 0 && u <= grid.columns - 1 && v <= grid.rows - 1;
}

/** Highest tangent of the land from a point at elevation zM along an azimuth, at least 0; steps of 1/20 of a cell. */
export function marchedHorizon(
  ground: Grid,
  xM: number,
  yM: number,
  zM: number,
  azimuthRad: number,
  stepM = ground.cellM / 20,
): number {
  let best = 0;
  for (let k = 1; ; k++) {
    const x = xM + k * stepM * Math.sin(azimuthRad);
    const y = yM + k * stepM * Math.cos(azimuthRad);
    if (!withinCentres(ground, x, y)) return best;
    const tangent = (sampleGrid(ground, x, y) - zM) / (k * stepM);
    if (tangent > best) best = tangent;
  }
}

/**
 * Metres of foliage from a point at elevation zM along a direction: steps of 5 cm, each asked whether it lies between
 * the ground and the top of the canopy's cell it is over. No pyramid, no crossings, no limit.
 */
export function marchedCanopyM(
  canopy: Grid,
  ground: Grid,
  xM: number,
  yM: number,
  zM: number,
  azimuthRad: number,
  tanAltitude: number,
  stepM = 0.05,
): number {
  const slant = Math.hypot(1, tanAltitude);
  let inside = 0;
  for (let k = 0; ; k++) {
    const along = ((k + 0.5) * stepM) / slant;
    const column = Math.floor((xM + along * Math.sin(azimuthRad) - canopy.westM) / canopy.cellM);
    const row = Math.floor((canopy.northM - yM - along * Math.cos(azimuthRad)) / canopy.cellM);
    if (column < 0 || row < 0 || column >= canopy.columns || row >= canopy.rows) return inside * stepM;
    const height = canopy.values[row * canopy.columns + column];
    if (!(height > 0)) continue;
    const top = sampleGrid(ground, cellCentreX(canopy, column), cellCentreY(canopy, row)) + height;
    if (zM + along * tanAltitude < top) inside++;
  }
}
