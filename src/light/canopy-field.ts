/**
 * The woods of a surface raster made ready for rays: each cell of the raster is an upright column of foliage from the
 * ground to its top, and over the columns lies a pyramid of the highest tops of 2 x 2, 4 x 4, … cells, so that a ray
 * passes at once over whole blocks that it clears (Tevs, Ihrke & Seidel 2008, "Maximum mipmaps for fast, accurate, and
 * scalable dynamic height field rendering").
 */
import {
  cellCentreX,
  cellCentreY,
  cellCount,
  type Grid,
  type GridSpec,
  sampleGrid,
} from '../numeric/grid.ts';
import type { Surroundings } from './surroundings.ts';

/** What lets through less than this share of light, in leaf and leafless, lets through none. */
const DARK_SHARE = 1e-4;

export interface CanopyField extends GridSpec {
  readonly depthOnPerM: number;
  readonly depthOffPerM: number;
  /**
   * Elevation (m) of the foliage's top by cell, then the highest of 2 x 2, 4 x 4, … cells up to one block of all;
   * -Infinity without foliage.
   */
  readonly tops: Float32Array;
  /** Where each level begins in `tops`, and its columns. */
  readonly levelStart: Int32Array;
  readonly levelColumns: Int32Array;
  readonly highestM: number;
  /** Metres of foliage after which it is dark. */
  readonly longestM: number;
}

/**
 * Null where no foliage stands. Memory: 5.4 bytes a cell of the raster, besides the raster.
 * @param ground elevations on which the canopy stands; where they are missing there is none.
 */
export function computeCanopyField(
  { canopy, depthOnPerM, depthOffPerM }: Surroundings,
  ground: Grid,
): CanopyField | null {
  const { columns, rows, cellM, westM, northM } = canopy;
  const starts = [0];
  const columnsOf = [columns];
  let size = cellCount(canopy);
  for (let w = columns, h = rows; w > 1 || h > 1; ) {
    w = (w + 1) >> 1;
    h = (h + 1) >> 1;
    starts.push(size);
    columnsOf.push(w);
    size += w * h;
  }
  const tops = new Float32Array(size).fill(Number.NEGATIVE_INFINITY);
  for (let r = 0, cell = 0; r < rows; r++)
    for (let c = 0; c < columns; c++, cell++) {
      if (!(canopy.values[cell] > 0)) continue;
      const top = sampleGrid(ground, cellCentreX(canopy, c), cellCentreY(canopy, r)) + canopy.values[cell];
      if (!Number.isNaN(top)) tops[cell] = top;
    }
  for (let level = 1, h = rows; level < starts.length; level++, h = (h + 1) >> 1) {
    const wide = columnsOf[level - 1];
    for (let r = 0, below = starts[level - 1]; r < h; r++)
      for (let c = 0; c < wide; c++, below++) {
        const block = starts[level] + (r >> 1) * columnsOf[level] + (c >> 1);
        if (tops[below] > tops[block]) tops[block] = tops[below];
      }
  }
  const highestM = tops[size - 1];
  if (highestM === Number.NEGATIVE_INFINITY) return null;
  return {
    columns,
    rows,
    cellM,
    westM,
    northM,
    depthOnPerM,
    depthOffPerM,
    tops,
    levelStart: Int32Array.from(starts),
    levelColumns: Int32Array.from(columnsOf),
    highestM,
    longestM: -Math.log(DARK_SHARE) / Math.min(depthOnPerM, depthOffPerM),
  };
}

/** A place nearer to a cell's side than this share of a cell is on it. */
const ON_SIDE = 1e-9;
/** Blocks of 8 x 8 cells are looked at first: around a reading the land is mostly open. */
const FIRST_LEVEL = 3;
const ALONG_AXIS = 1e-12;

/**
 * Hot: metres of foliage along one ray from a point at elevation zM, at most `longestM`; exact for the columns as they
 * are. What lies behind the land is not asked here.
 * @param sx,sy unit vector in plan, along the grid's axes; @param tanAltitude above 0
 */
export function canopyPathM(
  field: CanopyField,
  xM: number,
  yM: number,
  zM: number,
  sx: number,
  sy: number,
  tanAltitude: number,
): number {
  const { tops, levelStart, levelColumns, columns, rows, cellM } = field;
  // Places in cells from the north-west corner; t counts cells along the ray in plan.
  const u0 = (xM - field.westM) / cellM;
  const v0 = (field.northM - yM) / cellM;
  const du = Math.abs(sx) < ALONG_AXIS ? 0 : sx;
  const dv = Math.abs(sy) < ALONG_AXIS ? 0 : -sy;
  const perU = du === 0 ? Number.POSITIVE_INFINITY : 1 / du;
  const perV = dv === 0 ? Number.POSITIVE_INFINITY : 1 / dv;
  const rise = tanAltitude * cellM;
  const perRise = 1 / rise;
  // Until it is above all tops, or leaves the raster.
  let tEnd = (field.highestM - zM) * perRise;
  let t = 0;
  if (du !== 0) {
    t = Math.max(t, ((du > 0 ? 0 : columns) - u0) * perU);
    tEnd = Math.min(tEnd, ((du > 0 ? columns : 0) - u0) * perU);
  } else if (u0 < 0 || u0 >= columns) return 0;
  if (dv !== 0) {
    t = Math.max(t, ((dv > 0 ? 0 : rows) - v0) * perV);
    tEnd = Math.min(tEnd, ((dv > 0 ? rows : 0) - v0) * perV);
  } else if (v0 < 0 || v0 >= rows) return 0;
  if (t >= tEnd) return 0;

  const slant = cellM * Math.sqrt(1 + tanAltitude * tanAltitude);
  const most = field.longestM / slant;
  const last = levelStart.length - 1;
  const stepI = du > 0 ? 1 : -1;
  const stepJ = dv > 0 ? 1 : -1;
  const acrossU = Math.abs(perU);
  const acrossV = Math.abs(perV);
  let i = cellAt(u0 + du * t, du, columns);
  let j = cellAt(v0 + dv * t, dv, rows);
  let level = Math.min(FIRST_LEVEL, last);
  let inside = 0;
  for (;;) {
    const z = zM + rise * t;
    let top = tops[levelStart[level] + (j >> level) * levelColumns[level] + (i >> level)];
    while (top > z && level > 0) {
      level--;
      top = tops[levelStart[level] + (j >> level) * levelColumns[level] + (i >> level)];
    }
    // The block's sides that the ray goes towards.
    const iLow = (i >> level) << level;
    const jLow = (j >> level) << level;
    const size = 1 << level;
    let tu = du === 0 ? perU : ((du > 0 ? iLow + size : iLow) - u0) * perU;
    let tv = dv === 0 ? perV : ((dv > 0 ? jLow + size : jLow) - v0) * perV;
    if (top > z) {
      // Among foliage: cell by cell, until the ray clears one.
      for (let here = z; top > here; top = tops[j * columns + i], here = zM + rise * t) {
        const tOut = Math.min(tu, tv, tEnd);
        if (tOut > t) inside += Math.min(tOut - t, (top - here) * perRise);
        if (inside >= most) return field.longestM;
        if (tOut >= tEnd) return inside * slant;
        t = Math.max(t, tOut);
        if (tu < tv) {
          i += stepI;
          tu += acrossU;
        } else {
          j += stepJ;
          tv += acrossV;
        }
        if (i < 0 || j < 0 || i >= columns || j >= rows) return inside * slant;
      }
      continue;
    }
    // Over the block: out by the nearer side; along the other axis the ray is still within it.
    if (Math.min(tu, tv) >= tEnd) return inside * slant;
    if (tu < tv) {
      if (tu > t) t = tu;
      i = du > 0 ? iLow + size : iLow - 1;
      j = Math.min(jLow + size - 1, Math.max(jLow, Math.floor(v0 + dv * tu)));
    } else {
      if (tv > t) t = tv;
      j = dv > 0 ? jLow + size : jLow - 1;
      i = Math.min(iLow + size - 1, Math.max(iLow, Math.floor(u0 + du * tv)));
    }
    if (i < 0 || j < 0 || i >= columns || j >= rows) return inside * slant;
    if (level < last) level++;
  }
}

function cellAt(place: number, along: number, count: number): number {
  const nudged = place + (along > 0 ? ON_SIDE : along < 0 ? -ON_SIDE : 0);
  return Math.min(count - 1, Math.max(0, Math.floor(nudged)));
}
