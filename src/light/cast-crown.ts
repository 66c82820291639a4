/**
 * Hot code: the shadow of one crown from one direction on a tile. In plan the shadow lies within the crown's circle
 * swept away from the sun; each cell in that swept circle gets its exact path, from its own elevation.
 */
import {
  CROWN_BASE,
  CROWN_GROUND,
  CROWN_RADIUS,
  CROWN_STRIDE,
  CROWN_TOP,
  CROWN_X,
  CROWN_Y,
  type CrownSet,
} from '../crowns/crown-set.ts';
import { conePathM, cylinderPathM, ellipsoidPathM } from '../crowns/path-length.ts';
import type { RayDirection, Shadow, ShadowTile } from './shadow-tile.ts';

/** Fills `shadow`. @returns false when no cell of the tile can be reached (shadow is then undefined). */
export function castCrown(
  tile: ShadowTile,
  crowns: CrownSet,
  index: number,
  ray: RayDirection,
  shadow: Shadow,
): boolean {
  const { values } = crowns;
  const v = index * CROWN_STRIDE;
  const groundM = values[v + CROWN_GROUND];
  const baseZ = groundM + values[v + CROWN_BASE];
  const topZ = groundM + values[v + CROWN_TOP];
  const farM = (topZ - tile.lowestM) / ray.tanAltitude;
  if (!(farM > 0)) return false;
  const nearM = Math.max(0, (baseZ - tile.highestM) / ray.tanAltitude);
  const radiusM = values[v + CROWN_RADIUS];
  const x = values[v + CROWN_X];
  const y = values[v + CROWN_Y];
  const ax = x - ray.sx * nearM;
  const ay = y - ray.sy * nearM;
  const bx = x - ray.sx * farM;
  const by = y - ray.sy * farM;

  const { columns, rows, cellM, westM, northM, readingZM } = tile;
  const invCell = 1 / cellM;
  const rowFirst = Math.max(0, Math.ceil((northM - Math.max(ay, by) - radiusM) * invCell - 0.5));
  const rowEnd = Math.min(rows, Math.floor((northM - Math.min(ay, by) + radiusM) * invCell - 0.5) + 1);
  if (rowFirst >= rowEnd) return false;
  const eastReach = Math.max(ax, bx) + radiusM;
  const westReach = Math.min(ax, bx) - radiusM;
  if ((eastReach - westM) * invCell < 0.5 || (westReach - westM) * invCell > columns - 0.5) return false;

  const form = crowns.form[index];
  const lengthM = topZ - baseZ;
  const half = lengthM / 2;
  // The flanks of the swept circle, left and right of its course.
  const nx = ray.sy * radiusM;
  const ny = -ray.sx * radiusM;
  const runX = bx - ax;
  const runY = by - ay;
  const { ux, uy, uz } = ray;
  const { columnFirst, columnEnd, pathM } = shadow;
  const invRadius = 1 / radiusM;
  const radius2 = radiusM * radiusM;
  let touched = false;
  for (let r = rowFirst; r < rowEnd; r++) {
    const cy = northM - (r + 0.5) * cellM;
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    const da = cy - ay;
    if (da * da <= radius2) {
      const w = Math.sqrt(radius2 - da * da);
      low = ax - w;
      high = ax + w;
    }
    const db = cy - by;
    if (db * db <= radius2) {
      const w = Math.sqrt(radius2 - db * db);
      if (bx - w < low) low = bx - w;
      if (bx + w > high) high = bx + w;
    }
    if (runY !== 0) {
      const left = (da - ny) / runY;
      if (left >= 0 && left <= 1) {
        const at = ax + nx + left * runX;
        if (at < low) low = at;
        if (at > high) high = at;
      }
      const right = (da + ny) / runY;
      if (right >= 0 && right <= 1) {
        const at = ax - nx + right * runX;
        if (at < low) low = at;
        if (at > high) high = at;
      }
    }
    let first = Math.ceil((low - westM) * invCell - 0.5);
    let end = Math.floor((high - westM) * invCell - 0.5) + 1;
    if (first < 0) first = 0;
    if (end > columns) end = columns;
    columnFirst[r] = first;
    columnEnd[r] = end;
    if (first >= end) continue;
    touched = true;
    const qy = cy - y;
    const rowStart = r * columns;
    const qx0 = westM + 0.5 * cellM - x;
    if (form === 0) {
      const centreZ = baseZ + half;
      const invHalf = 1 / half;
      for (let c = first; c < end; c++) {
        const i = rowStart + c;
        pathM[i] = ellipsoidPathM(
          qx0 + c * cellM,
          qy,
          readingZM[i] - centreZ,
          ux,
          uy,
          uz,
          invRadius,
          invHalf,
          -half,
        );
      }
    } else if (form === 1) {
      const invLength = 1 / lengthM;
      for (let c = first; c < end; c++) {
        const i = rowStart + c;
        pathM[i] = ellipsoidPathM(
          qx0 + c * cellM,
          qy,
          readingZM[i] - baseZ,
          ux,
          uy,
          uz,
          invRadius,
          invLength,
          0,
        );
      }
    } else if (form === 2) {
      const spread = radiusM / lengthM;
      for (let c = first; c < end; c++) {
        const i = rowStart + c;
        pathM[i] = conePathM(qx0 + c * cellM, qy, readingZM[i] - topZ, ux, uy, uz, spread, lengthM);
      }
    } else {
      for (let c = first; c < end; c++) {
        const i = rowStart + c;
        pathM[i] = cylinderPathM(qx0 + c * cellM, qy, readingZM[i] - baseZ, ux, uy, uz, radiusM, lengthM);
      }
    }
  }
  shadow.rowFirst = rowFirst;
  shadow.rowEnd = rowEnd;
  return touched;
}
