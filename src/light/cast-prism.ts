/**
 * Hot code: the shadow of one prism (a piece of a belt, block, building or wall) from one direction on a tile. In
 * plan the shadow lies within the prism's ring swept away from the sun; each cell there is clipped against every
 * face, with what is constant along a row of cells taken out of the loop.
 */
import {
  PRISM_BASE,
  PRISM_GROUND_A,
  PRISM_GROUND_B,
  PRISM_GROUND_C,
  PRISM_STRIDE,
  PRISM_TOP,
  type PrismSet,
} from '../crowns/prism-set.ts';
import type { RayDirection, Shadow, ShadowTile } from './shadow-tile.ts';

/** A prism set made ready for casting. */
export interface PrismCaster {
  readonly prisms: PrismSet;
  /** Lowest base and highest top over the corners of each prism, metres above datum: two values a prism. */
  readonly reachZM: Float64Array;
  /** Room for the clipping of one row, as long as the longest ring. */
  readonly faceT: Float64Array;
  readonly faceStep: Float64Array;
}

export function prismCaster(prisms: PrismSet): PrismCaster {
  const reachZM = new Float64Array(2 * prisms.count);
  let longestRing = 0;
  for (let p = 0; p < prisms.count; p++) {
    const v = p * PRISM_STRIDE;
    let lowest = Number.POSITIVE_INFINITY;
    let highest = Number.NEGATIVE_INFINITY;
    for (let k = prisms.ringStart[p]; k < prisms.ringStart[p + 1]; k++) {
      const groundM =
        prisms.values[v + PRISM_GROUND_A] +
        prisms.values[v + PRISM_GROUND_B] * prisms.ringXY[2 * k] +
        prisms.values[v + PRISM_GROUND_C] * prisms.ringXY[2 * k + 1];
      lowest = Math.min(lowest, groundM);
      highest = Math.max(highest, groundM);
    }
    reachZM[2 * p] = lowest + prisms.values[v + PRISM_BASE];
    reachZM[2 * p + 1] = highest + prisms.values[v + PRISM_TOP];
    longestRing = Math.max(longestRing, prisms.ringStart[p + 1] - prisms.ringStart[p]);
  }
  return {
    prisms,
    reachZM,
    faceT: new Float64Array(longestRing),
    faceStep: new Float64Array(longestRing),
  };
}

/** A face this nearly parallel to the ray is given this speed instead, which puts its crossing out of reach. */
const PARALLEL = 1e-12;

/** Fills `shadow`. @returns false when no cell of the tile can be reached. */
export function castPrism(
  tile: ShadowTile,
  caster: PrismCaster,
  index: number,
  ray: RayDirection,
  shadow: Shadow,
): boolean {
  const { prisms, reachZM, faceT, faceStep } = caster;
  const farM = (reachZM[2 * index + 1] - tile.lowestM) / ray.tanAltitude;
  if (!(farM > 0)) return false;
  const nearM = Math.max(0, (reachZM[2 * index] - tile.highestM) / ray.tanAltitude);
  const { ringXY } = prisms;
  const first = prisms.ringStart[index];
  const end = prisms.ringStart[index + 1];
  const nearX = -ray.sx * nearM;
  const nearY = -ray.sy * nearM;
  const farX = -ray.sx * farM;
  const farY = -ray.sy * farM;

  let west = Number.POSITIVE_INFINITY;
  let east = Number.NEGATIVE_INFINITY;
  let south = Number.POSITIVE_INFINITY;
  let north = Number.NEGATIVE_INFINITY;
  for (let k = first; k < end; k++) {
    const x = ringXY[2 * k];
    const y = ringXY[2 * k + 1];
    if (x < west) west = x;
    if (x > east) east = x;
    if (y < south) south = y;
    if (y > north) north = y;
  }
  const { columns, rows, cellM, westM, northM, readingZM } = tile;
  const invCell = 1 / cellM;
  const rowFirst = Math.max(0, Math.ceil((northM - north - Math.max(nearY, farY)) * invCell - 0.5));
  const rowEnd = Math.min(rows, Math.floor((northM - south - Math.min(nearY, farY)) * invCell - 0.5) + 1);
  if (rowFirst >= rowEnd) return false;
  if ((east + Math.max(nearX, farX) - westM) * invCell < 0.5) return false;
  if ((west + Math.min(nearX, farX) - westM) * invCell > columns - 0.5) return false;

  const { columnFirst, columnEnd, pathM } = shadow;
  columnFirst.fill(columns, rowFirst, rowEnd);
  columnEnd.fill(0, rowFirst, rowEnd);
  // The swept ring's outline is made of edges of the ring at both ends of the sweep and of courses of its corners.
  let px = ringXY[2 * (end - 1)];
  let py = ringXY[2 * (end - 1) + 1];
  for (let k = first; k < end; k++) {
    const x = ringXY[2 * k];
    const y = ringXY[2 * k + 1];
    widenSpans(px + nearX, py + nearY, x + nearX, y + nearY);
    widenSpans(px + farX, py + farY, x + farX, y + farY);
    widenSpans(x + nearX, y + nearY, x + farX, y + farY);
    px = x;
    py = y;
  }

  function widenSpans(x0: number, y0: number, x1: number, y1: number): void {
    const top = Math.max(y0, y1);
    const bottom = Math.min(y0, y1);
    const from = Math.max(rowFirst, Math.ceil((northM - top) * invCell - 0.5));
    const to = Math.min(rowEnd - 1, Math.floor((northM - bottom) * invCell - 0.5));
    const slope = y1 !== y0 ? (x1 - x0) / (y1 - y0) : 0;
    for (let r = from; r <= to; r++) {
      const x = x0 + (northM - (r + 0.5) * cellM - y0) * slope;
      const at = (x - westM) * invCell - 0.5;
      // A hair's breadth of slack: the clipping decides, not the outline.
      const low = Math.ceil(at - 1e-9);
      const high = Math.floor(at + 1e-9) + 1;
      if (low < columnFirst[r]) columnFirst[r] = Math.max(0, low);
      if (high > columnEnd[r]) columnEnd[r] = Math.min(columns, high);
    }
  }

  const v = index * PRISM_STRIDE;
  const groundA = prisms.values[v + PRISM_GROUND_A];
  const slopeX = prisms.values[v + PRISM_GROUND_B];
  const slopeY = prisms.values[v + PRISM_GROUND_C];
  const base = prisms.values[v + PRISM_BASE];
  const top = prisms.values[v + PRISM_TOP];
  let climb = ray.uz - slopeX * ray.ux - slopeY * ray.uy;
  if (Math.abs(climb) < PARALLEL) climb = PARALLEL;
  const invClimb = 1 / climb;
  const entryFace = climb > 0 ? base : top;
  const exitFace = climb > 0 ? top : base;

  const edges = end - first;
  const x0 = westM + 0.5 * cellM;
  let touched = false;
  for (let r = rowFirst; r < rowEnd; r++) {
    const from = columnFirst[r];
    const to = columnEnd[r];
    if (from >= to) continue;
    touched = true;
    const y = northM - (r + 0.5) * cellM;
    // Entering faces are filed from the front, leaving faces from the back.
    let entering = 0;
    let leaving = edges;
    let ax = ringXY[2 * (end - 1)];
    let ay = ringXY[2 * (end - 1) + 1];
    for (let k = first; k < end; k++) {
      const bx = ringXY[2 * k];
      const by = ringXY[2 * k + 1];
      const nx = by - ay;
      const ny = ax - bx;
      let speed = nx * ray.ux + ny * ray.uy;
      if (Math.abs(speed) < PARALLEL) speed = PARALLEL;
      const slot = speed < 0 ? entering++ : --leaving;
      faceT[slot] = -(nx * (x0 - ax) + ny * (y - ay)) / speed;
      faceStep[slot] = (-nx * cellM) / speed;
      ax = bx;
      ay = by;
    }
    const rowStart = r * columns;
    const groundRow = groundA + slopeX * x0 + slopeY * y;
    const groundStep = slopeX * cellM;
    for (let c = from; c < to; c++) {
      const above = readingZM[rowStart + c] - (groundRow + groundStep * c);
      let tIn = (entryFace - above) * invClimb;
      let tOut = (exitFace - above) * invClimb;
      if (!(tIn > 0)) tIn = 0;
      for (let e = 0; e < entering; e++) {
        const t = faceT[e] + faceStep[e] * c;
        if (t > tIn) tIn = t;
      }
      for (let e = leaving; e < edges; e++) {
        const t = faceT[e] + faceStep[e] * c;
        if (t < tOut) tOut = t;
      }
      pathM[rowStart + c] = tOut > tIn ? tOut - tIn : 0;
    }
  }
  shadow.rowFirst = rowFirst;
  shadow.rowEnd = rowEnd;
  return touched;
}
