import { type Grid, sampleGrid } from '../numeric/grid.ts';
import { type Frame, type LonLat, toLocal } from './frame.ts';
import { azimuthDeg, distanceM } from './geodesic.ts';

/** One distance as a plan has it and as a tape on the ground has it, metres. */
export interface Taped {
  readonly levelM: number;
  /** Along a tape pulled taut over the ground: it lies on what stands up and hangs over what falls away. */
  readonly tapeM: number;
}

/** The ground is felt for at least this often along a tape, m. */
const STEP_M = 0.5;

/**
 * The level (geodesic) distance between two places and the length of a taut tape between them: the upper hull of the
 * ground's profile. Where the ground is not known the tape is taken as level.
 */
export function tapedDistance(frame: Frame, ground: Grid, from: LonLat, to: LonLat): Taped {
  const levelM = distanceM(from, to);
  const [x0, y0] = toLocal(frame, from);
  const [x1, y1] = toLocal(frame, to);
  const steps = Math.max(1, Math.ceil(levelM / STEP_M));
  const hull: [number, number][] = [];
  for (let i = 0; i <= steps; i++) {
    const share = i / steps;
    const elevationM = sampleGrid(ground, x0 + share * (x1 - x0), y0 + share * (y1 - y0));
    if (Number.isNaN(elevationM)) return { levelM, tapeM: levelM };
    const point: [number, number] = [share * levelM, elevationM];
    while (hull.length >= 2 && !turnsDown(hull[hull.length - 2], hull[hull.length - 1], point)) hull.pop();
    hull.push(point);
  }
  let tapeM = 0;
  for (let i = 1; i < hull.length; i++)
    tapeM += Math.hypot(hull[i][0] - hull[i - 1][0], hull[i][1] - hull[i - 1][1]);
  return { levelM, tapeM };
}

/** True where the middle of three points of a profile stands above the straight line between the outer two. */
const turnsDown = (a: [number, number], b: [number, number], c: [number, number]): boolean =>
  (b[1] - a[1]) * (c[0] - b[0]) > (c[1] - b[1]) * (b[0] - a[0]);

/** Level position of a place seen from A towards B: metres along the line, and metres to its right (left below zero). */
export function alongAndRight(a: LonLat, b: LonLat, place: LonLat): { alongM: number; rightM: number } {
  const lengthM = distanceM(a, place);
  const turnRad = lengthM === 0 ? 0 : ((azimuthDeg(a, place) - azimuthDeg(a, b)) * Math.PI) / 180;
  return { alongM: lengthM * Math.cos(turnRad), rightM: lengthM * Math.sin(turnRad) };
}
