import { type Frame, type LonLat, toLocal } from './frame.ts';
import { distanceM } from './geodesic.ts';

/** The step whose two lengths are compared, degrees of latitude: about 110 m. */
const STEP_DEG = 1e-3;

/** Metres of the local frame a true metre at a place: the scale factor of the projection, 0.9996 to about 1.001. */
export function gridScaleAt(frame: Frame, [lonDeg, latDeg]: LonLat): number {
  const south: LonLat = [lonDeg, latDeg - STEP_DEG / 2];
  const north: LonLat = [lonDeg, latDeg + STEP_DEG / 2];
  const [x0, y0] = toLocal(frame, south);
  const [x1, y1] = toLocal(frame, north);
  return Math.hypot(x1 - x0, y1 - y0) / distanceM(south, north);
}
