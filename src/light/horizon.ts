/**
 * How high the land stands around the cells: for stations spread over a tile, the tangent of the terrain's horizon
 * in evenly spaced azimuths, by marching along each azimuth over the elevations. Near the station every cell of the
 * ground counts; farther away the strides grow with the distance, over elevations averaged to match, so that a
 * horizon kilometres off costs no more than one nearby. (Sweeps after Dozier & Frew 1990 would find the same in
 * linear time; stations are few enough that marching is a small part of the work.)
 */
import { type Grid, type GridSpec, sampleGrid } from '../numeric/grid.ts';
import type { ShadowTile } from './shadow-tile.ts';

/** Azimuths around the compass, clockwise from grid north. */
const AZIMUTHS = 120;
/** A stride is this share of the distance, or a cell of the ground where that is longer. */
const STRIDE_SHARE = 1 / 40;
/**
 * Stations are half a ground cell apart, because the horizon bends where the ground's facets meet; no finer than 2 m,
 * than the ground itself or than the computed cells, and no coarser than 30 m.
 */
const stationSpacingM = (groundCellM: number, cellM: number): number =>
  Math.max(cellM, Math.min(groundCellM, Math.max(2, groundCellM / 2), 30));

/** Elevations at full size, then averaged over 2 x 2, 4 x 4, … cells. */
export interface GroundPyramid {
  readonly levels: readonly Grid[];
  readonly highestM: number;
  readonly lowestM: number;
}

export function groundPyramid(ground: Grid): GroundPyramid {
  let highestM = Number.NEGATIVE_INFINITY;
  let lowestM = Number.POSITIVE_INFINITY;
  for (const z of ground.values) {
    if (z > highestM) highestM = z;
    if (z < lowestM) lowestM = z;
  }
  const levels = [ground];
  // An uneven last row or column would move the edge of the land; such a level is the last.
  for (let grid = ground; grid.columns >= 16 && grid.rows >= 16; ) {
    grid = halved(grid);
    levels.push(grid);
  }
  return { levels, highestM, lowestM };
}

function halved(grid: Grid): Grid {
  const columns = Math.ceil(grid.columns / 2);
  const rows = Math.ceil(grid.rows / 2);
  const values = new Float32Array(columns * rows);
  for (let r = 0; r < rows; r++)
    for (let c = 0; c < columns; c++) {
      let sum = 0;
      let n = 0;
      for (let j = 2 * r; j < Math.min(grid.rows, 2 * r + 2); j++)
        for (let i = 2 * c; i < Math.min(grid.columns, 2 * c + 2); i++) {
          const z = grid.values[j * grid.columns + i];
          if (Number.isNaN(z)) continue;
          sum += z;
          n++;
        }
      values[r * columns + c] = n > 0 ? sum / n : Number.NaN;
    }
  return { columns, rows, cellM: grid.cellM * 2, westM: grid.westM, northM: grid.northM, values };
}

export interface TileHorizons {
  /** Station (i, j) stands at x = westM + i * spacingM, y = northM - j * spacingM. */
  readonly columns: number;
  readonly rows: number;
  readonly spacingM: number;
  readonly westM: number;
  readonly northM: number;
  /** Tangent of the horizon's altitude, azimuth-major: (azimuth * rows + j) * columns + i. At least 0. */
  readonly tangent: Float32Array;
}

/** Horizons of a tile, or null where no land can rise above the reading height. */
export function tileHorizons(
  tile: ShadowTile,
  pyramid: GroundPyramid,
  readingHeightM: number,
): TileHorizons | null {
  const ground = pyramid.levels[0];
  if (pyramid.highestM <= tile.lowestM || !(tile.lowestM < Number.POSITIVE_INFINITY)) return null;
  // The lattice hangs on the ground's own corner, so that it does not depend on how the cells were cut into tiles.
  const spacingM = stationSpacingM(ground.cellM, tile.cellM);
  const x0 = ground.westM + spacingM / 2;
  const y0 = ground.northM - spacingM / 2;
  const firstColumn = Math.floor((tile.westM - x0) / spacingM);
  const lastColumn = Math.ceil((tile.westM + tile.columns * tile.cellM - x0) / spacingM);
  const firstRow = Math.floor((y0 - tile.northM) / spacingM);
  const lastRow = Math.ceil((y0 - tile.northM + tile.rows * tile.cellM) / spacingM);
  const columns = lastColumn - firstColumn + 1;
  const rows = lastRow - firstRow + 1;
  const westM = x0 + firstColumn * spacingM;
  const northM = y0 - firstRow * spacingM;
  const tangent = new Float32Array(AZIMUTHS * columns * rows);
  let highest = 0;
  for (let j = 0; j < rows; j++)
    for (let i = 0; i < columns; i++) {
      const x = westM + i * spacingM;
      const y = northM - j * spacingM;
      const z = sampleGrid(ground, x, y) + readingHeightM;
      for (let a = 0; a < AZIMUTHS; a++) {
        const azimuth = (2 * Math.PI * a) / AZIMUTHS;
        const value = horizonTangent(pyramid, x, y, z, Math.sin(azimuth), Math.cos(azimuth));
        tangent[(a * rows + j) * columns + i] = value;
        if (value > highest) highest = value;
      }
    }
  return highest > 0 ? { columns, rows, spacingM, westM, northM, tangent } : null;
}

/** Highest tangent of the land along one azimuth, at least 0. (sx, sy) is a unit vector in plan. */
export function horizonTangent(
  pyramid: GroundPyramid,
  xM: number,
  yM: number,
  zM: number,
  sx: number,
  sy: number,
): number {
  const { levels, highestM } = pyramid;
  const ground = levels[0];
  const limitM = exitDistanceM(ground, xM, yM, sx, sy);
  let best = 0;
  let bestAtM = 0;
  let strideM = ground.cellM;
  for (let d = ground.cellM / 2; d < limitM + strideM; d += strideM) {
    const at = Math.min(d, limitM);
    if (!((highestM - zM) / at > best)) break;
    const tangent = tangentAt(at, strideM);
    if (tangent > best) {
      best = tangent;
      bestAtM = at;
    }
    strideM = Math.max(ground.cellM, d * STRIDE_SHARE);
  }
  if (best === 0) return 0;
  // A crest lies between two strides; feel for it in ever smaller ones, over the elevations as they are.
  const aroundM = Math.max(ground.cellM, bestAtM * STRIDE_SHARE);
  for (let step = aroundM / 2; step > ground.cellM / 5; step /= 2) {
    const centreM = bestAtM;
    for (const at of [centreM - step, centreM + step]) {
      if (at <= 0 || at > limitM) continue;
      const tangent = tangentAt(at, 0);
      if (tangent > best) {
        best = tangent;
        bestAtM = at;
      }
    }
  }
  return best;

  function tangentAt(distanceM: number, width: number): number {
    const level = Math.min(levels.length - 1, Math.max(0, Math.floor(Math.log2(width / ground.cellM))));
    return (sampleGrid(levels[level], xM + sx * distanceM, yM + sy * distanceM) - zM) / distanceM;
  }
}

/** Distance at which a ray in plan leaves the hull of the ground's cell centres. */
function exitDistanceM(ground: GridSpec, xM: number, yM: number, sx: number, sy: number): number {
  const half = ground.cellM / 2;
  const west = ground.westM + half;
  const east = ground.westM + ground.columns * ground.cellM - half;
  const north = ground.northM - half;
  const south = ground.northM - ground.rows * ground.cellM + half;
  let limit = Number.POSITIVE_INFINITY;
  if (sx > 1e-12) limit = Math.min(limit, (east - xM) / sx);
  if (sx < -1e-12) limit = Math.min(limit, (west - xM) / sx);
  if (sy > 1e-12) limit = Math.min(limit, (north - yM) / sy);
  if (sy < -1e-12) limit = Math.min(limit, (south - yM) / sy);
  return Math.max(0, limit);
}

/**
 * Sets `behind` to 1 for the cells whose view in a direction is blocked by the land, 0 elsewhere.
 * @returns whether any is.
 */
export function markBehindLand(
  tile: ShadowTile,
  horizons: TileHorizons,
  gridAzimuthRad: number,
  tanAltitude: number,
  behind: Uint8Array,
): boolean {
  const { columns, rows, tangent, spacingM } = horizons;
  const turn = gridAzimuthRad / (2 * Math.PI);
  const along = (turn - Math.floor(turn)) * AZIMUTHS;
  const a0 = Math.floor(along) % AZIMUTHS;
  const share = along - Math.floor(along);
  const from = a0 * rows * columns;
  const to = ((a0 + 1) % AZIMUTHS) * rows * columns;
  let highest = 0;
  for (let s = 0; s < rows * columns; s++) {
    const h = tangent[from + s] * (1 - share) + tangent[to + s] * share;
    if (h > highest) highest = h;
  }
  if (highest <= tanAltitude) return false;
  for (let r = 0; r < tile.rows; r++) {
    const v = (horizons.northM - (tile.northM - (r + 0.5) * tile.cellM)) / spacingM;
    const j = Math.min(rows - 2, Math.floor(v));
    const dv = v - j;
    for (let c = 0; c < tile.columns; c++) {
      const u = (tile.westM + (c + 0.5) * tile.cellM - horizons.westM) / spacingM;
      const i = Math.min(columns - 2, Math.floor(u));
      const du = u - i;
      const s = j * columns + i;
      const h0 = bilinear(from + s, du, dv);
      const h1 = bilinear(to + s, du, dv);
      behind[r * tile.columns + c] = h0 * (1 - share) + h1 * share > tanAltitude ? 1 : 0;
    }
  }
  return true;

  function bilinear(s: number, du: number, dv: number): number {
    return (
      (tangent[s] * (1 - du) + tangent[s + 1] * du) * (1 - dv) +
      (tangent[s + columns] * (1 - du) + tangent[s + columns + 1] * du) * dv
    );
  }
}
