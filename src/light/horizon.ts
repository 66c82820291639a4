/**
 * The land's horizon: as swept for all cells of a grid at once (horizon-sweep.ts), asked for one direction after
 * another; and from single points, by marching along one azimuth over the elevations. There every cell of the ground
 * near the point counts; farther away the strides grow with the distance, over elevations averaged to match, so that
 * a horizon kilometres off costs no more than one nearby.
 */
import { type Grid, type GridSpec, sampleGrid } from '../numeric/grid.ts';
import type { ShadowTile } from './shadow-tile.ts';

/** Horizons seen from stations: (i, j) stands at x = westM + i * spacingM, y = northM - j * spacingM. */
export interface HorizonField {
  readonly columns: number;
  readonly rows: number;
  readonly spacingM: number;
  readonly westM: number;
  readonly northM: number;
  /** Evenly spaced, clockwise from grid north. */
  readonly azimuths: number;
  /** Tangent of the horizon's altitude, azimuth-major: (azimuth * rows + j) * columns + i. At least 0. */
  readonly tangent: Float32Array;
  /** Highest of them in each azimuth. */
  readonly highest: Float32Array;
}

/** Tangents of one row of cells' stations; as long as the widest field asked so far. */
let rowTangents = new Float32Array(64);

/**
 * Hot: sets `behind` to 1 for the cells of a tile whose view in a direction is blocked by the land, 0 for its others;
 * touches nothing where none is blocked.
 * @returns whether any may be.
 */
export function markBehindLand(
  tile: ShadowTile,
  field: HorizonField,
  gridAzimuthRad: number,
  tanAltitude: number,
  behind: Uint8Array,
): boolean {
  const { columns, rows, tangent, spacingM, azimuths, highest } = field;
  const turn = gridAzimuthRad / (2 * Math.PI);
  const along = (turn - Math.floor(turn)) * azimuths;
  const first = Math.floor(along) % azimuths;
  const next = (first + 1) % azimuths;
  const share = along - Math.floor(along);
  if (highest[first] * (1 - share) + highest[next] * share <= tanAltitude) return false;
  const from = first * rows * columns;
  const to = next * rows * columns;

  // The stations around the tile.
  const west = (tile.westM + tile.cellM / 2 - field.westM) / spacingM;
  const step = tile.cellM / spacingM;
  const north = (field.northM - tile.northM + tile.rowM / 2) / spacingM;
  const down = tile.rowM / spacingM;
  const clamp = (at: number, most: number) => Math.min(most, Math.max(0, at));
  const i0 = clamp(Math.floor(west), columns - 2);
  const i1 = clamp(Math.floor(west + (tile.columns - 1) * step), columns - 2) + 1;
  const j0 = clamp(Math.floor(north), rows - 2);
  const j1 = clamp(Math.floor(north + (tile.rows - 1) * down), rows - 2) + 1;
  if (!anyAbove()) return false;

  if (rowTangents.length < columns) rowTangents = new Float32Array(columns);
  const row = rowTangents;
  for (let r = 0; r < tile.rows; r++) {
    const v = north + r * down;
    const j = clamp(Math.floor(v), rows - 2);
    const dv = v - j;
    let lowest = Number.POSITIVE_INFINITY;
    let most = 0;
    for (let i = i0; i <= i1; i++) {
      const s = j * columns + i;
      const near = tangent[from + s] * (1 - dv) + tangent[from + s + columns] * dv;
      const far = tangent[to + s] * (1 - dv) + tangent[to + s + columns] * dv;
      const value = near * (1 - share) + far * share;
      row[i] = value;
      if (value < lowest) lowest = value;
      if (value > most) most = value;
    }
    const at = r * tile.stride;
    if (most <= tanAltitude || lowest > tanAltitude) {
      behind.fill(lowest > tanAltitude ? 1 : 0, at, at + tile.columns);
      continue;
    }
    for (let c = 0; c < tile.columns; c++) {
      const u = west + c * step;
      const i = clamp(Math.floor(u), columns - 2);
      behind[at + c] = row[i] + (u - i) * (row[i + 1] - row[i]) > tanAltitude ? 1 : 0;
    }
  }
  return true;

  function anyAbove(): boolean {
    for (let j = j0; j <= j1; j++)
      for (let s = j * columns + i0; s <= j * columns + i1; s++)
        if (tangent[from + s] * (1 - share) + tangent[to + s] * share > tanAltitude) return true;
    return false;
  }
}

/** A stride is this share of the distance, or a cell of the ground where that is longer. */
const STRIDE_SHARE = 1 / 40;

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
