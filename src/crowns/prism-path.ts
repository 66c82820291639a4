/**
 * Length of a ray inside a convex upright prism whose base and top are parallel to a sloping ground plane
 * (see PrismSet), by clipping the ray against every face (Cyrus & Beck 1978).
 */
import {
  PRISM_BASE,
  PRISM_GROUND_A,
  PRISM_GROUND_B,
  PRISM_GROUND_C,
  PRISM_STRIDE,
  PRISM_TOP,
  type PrismSet,
} from './prism-set.ts';

/**
 * @param index which prism of the set; @param ox,oy,oz ray origin, local frame (m); @param ux,uy,uz unit direction
 * @returns metres of path with t >= 0.
 */
export function prismPathM(
  prisms: PrismSet,
  index: number,
  ox: number,
  oy: number,
  oz: number,
  ux: number,
  uy: number,
  uz: number,
): number {
  const v = index * PRISM_STRIDE;
  const { values, ringXY } = prisms;
  const slopeX = values[v + PRISM_GROUND_B];
  const slopeY = values[v + PRISM_GROUND_C];
  let tIn = 0;
  let tOut = Number.POSITIVE_INFINITY;
  // Height above the ground plane along the ray: above + climb * t.
  const above = oz - (values[v + PRISM_GROUND_A] + slopeX * ox + slopeY * oy);
  const climb = uz - slopeX * ux - slopeY * uy;
  const base = values[v + PRISM_BASE];
  const top = values[v + PRISM_TOP];
  if (climb === 0) {
    if (above < base || above > top) return 0;
  } else {
    const t1 = (base - above) / climb;
    const t2 = (top - above) / climb;
    tIn = Math.max(0, Math.min(t1, t2));
    tOut = Math.max(t1, t2);
  }
  const first = prisms.ringStart[index];
  const last = prisms.ringStart[index + 1] - 1;
  let ax = ringXY[2 * last];
  let ay = ringXY[2 * last + 1];
  for (let i = first; i <= last; i++) {
    const bx = ringXY[2 * i];
    const by = ringXY[2 * i + 1];
    // Outward normal of an edge of a counter-clockwise ring.
    const nx = by - ay;
    const ny = ax - bx;
    const outside = nx * (ox - ax) + ny * (oy - ay);
    const speed = nx * ux + ny * uy;
    if (speed > 0) tOut = Math.min(tOut, -outside / speed);
    else if (speed < 0) tIn = Math.max(tIn, -outside / speed);
    else if (outside > 0) return 0;
    ax = bx;
    ay = by;
  }
  return tOut > tIn ? tOut - tIn : 0;
}
