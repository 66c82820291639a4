/**
 * Length of a ray inside a solid of foliage, in closed form. A ray is o + t * u with |u| = 1, t >= 0 and uz > 0 (it
 * climbs towards the sky); one that starts inside a solid counts from its start. Metres throughout.
 */
import type { CrownForm } from './crown-set.ts';

/**
 * Path through an ellipsoid of revolution with a vertical axis, cut off below `floorM`.
 * @param qx,qy,qz ray origin relative to the centre of the ellipsoid (m)
 * @param ux,uy,uz unit direction
 * @param invRadius 1 / horizontal semi-axis; @param invHalf 1 / vertical semi-axis
 * @param floorM height of the cut relative to the centre (m): -semi-axis for a whole ellipsoid, 0 for a dome
 */
function ellipsoidPathM(
  qx: number,
  qy: number,
  qz: number,
  ux: number,
  uy: number,
  uz: number,
  invRadius: number,
  invHalf: number,
  floorM: number,
): number {
  const px = qx * invRadius;
  const py = qy * invRadius;
  const pz = qz * invHalf;
  const vx = ux * invRadius;
  const vy = uy * invRadius;
  const vz = uz * invHalf;
  const a = vx * vx + vy * vy + vz * vz;
  const b = px * vx + py * vy + pz * vz;
  const c = px * px + py * py + pz * pz - 1;
  const disc = b * b - a * c;
  if (disc <= 0) return 0;
  const s = Math.sqrt(disc);
  const tOut = (s - b) / a;
  if (tOut <= 0) return 0;
  let tIn = (-s - b) / a;
  if (tIn < 0) tIn = 0;
  const tFloor = (floorM - qz) / uz;
  if (tFloor > tIn) tIn = tFloor;
  return tOut > tIn ? tOut - tIn : 0;
}

/**
 * Path through an upright cylinder.
 * @param qx,qy,qz ray origin relative to the centre of the base (m)
 */
function cylinderPathM(
  qx: number,
  qy: number,
  qz: number,
  ux: number,
  uy: number,
  uz: number,
  radiusM: number,
  lengthM: number,
): number {
  const a = ux * ux + uy * uy;
  const c = qx * qx + qy * qy - radiusM * radiusM;
  let tIn = -qz / uz;
  let tOut = (lengthM - qz) / uz;
  if (a > 1e-12) {
    const b = qx * ux + qy * uy;
    const disc = b * b - a * c;
    if (disc <= 0) return 0;
    const s = Math.sqrt(disc);
    tIn = Math.max(tIn, (-s - b) / a);
    tOut = Math.min(tOut, (s - b) / a);
  } else if (c >= 0) return 0;
  if (tIn < 0) tIn = 0;
  return tOut > tIn ? tOut - tIn : 0;
}

/**
 * Path through an upright cone, apex up.
 * @param qx,qy,qz ray origin relative to the apex (m; qz negative below it)
 * @param spread base radius / length
 */
function conePathM(
  qx: number,
  qy: number,
  qz: number,
  ux: number,
  uy: number,
  uz: number,
  spread: number,
  lengthM: number,
): number {
  const k = spread * spread;
  const a = ux * ux + uy * uy - k * uz * uz;
  const b = qx * ux + qy * uy - k * qz * uz;
  const c = qx * qx + qy * qy - k * qz * qz;
  const disc = b * b - a * c;
  if (disc <= 0) return 0;
  let tIn = Math.max(0, (-lengthM - qz) / uz);
  let tOut = -qz / uz;
  // q / a and c / q are the two roots without cancellation, also where a is next to nothing.
  const q = b >= 0 ? -(b + Math.sqrt(disc)) : Math.sqrt(disc) - b;
  const t1 = q / a;
  const t2 = c / q;
  if (a > 0) {
    tIn = Math.max(tIn, Math.min(t1, t2));
    tOut = Math.min(tOut, Math.max(t1, t2));
  } else {
    // Steeper than the flank: inside the lower nappe until the first root met going up, the only one below the apex.
    tOut = Math.min(tOut, a < 0 ? Math.min(t1, t2) : t2);
  }
  return tOut > tIn ? tOut - tIn : 0;
}

/**
 * Path through a crown.
 * @param ox,oy,oz ray origin relative to the foot of the stem (m)
 * @param baseM,topM height of the crown's base and top above the foot (m); @param radiusM its widest radius (m)
 */
export function crownPathM(
  form: CrownForm,
  ox: number,
  oy: number,
  oz: number,
  ux: number,
  uy: number,
  uz: number,
  baseM: number,
  topM: number,
  radiusM: number,
): number {
  const lengthM = topM - baseM;
  if (form === 'ellipsoid') {
    const half = lengthM / 2;
    return ellipsoidPathM(ox, oy, oz - baseM - half, ux, uy, uz, 1 / radiusM, 1 / half, -half);
  }
  if (form === 'dome') return ellipsoidPathM(ox, oy, oz - baseM, ux, uy, uz, 1 / radiusM, 1 / lengthM, 0);
  if (form === 'cone') return conePathM(ox, oy, oz - topM, ux, uy, uz, radiusM / lengthM, lengthM);
  return cylinderPathM(ox, oy, oz - baseM, ux, uy, uz, radiusM, lengthM);
}
