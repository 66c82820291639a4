/**
 * The sky as some 1,300 directions of equal share of the light on level ground: a golden-angle spiral over the
 * disc into which the sky projects (so the cosine of the angle to the vertical is already in the density). No two lie
 * at one altitude, so that a horizon of any height cuts off its right share; sky view of rings and walls is within
 * 0.005 of the analytic values (half as many directions miss walls by 0.008).
 */
import { degToRad } from '../units/angle.ts';
import type { SkyClimate } from './sky-climate.ts';

export const SKY_DIRECTION_COUNT = 1280;

export interface SkyDirections {
  readonly count: number;
  readonly altitudeRad: Float64Array;
  /** Clockwise from true north. */
  readonly azimuthRad: Float64Array;
  /** Share of the diffuse light on open level ground; sums to 1. */
  readonly share: Float64Array;
}

/** @param sky isotropic, or the CIE overcast sky, three times as bright overhead as at the horizon (Moon & Spencer). */
export function skyDirections(
  sky: SkyClimate['diffuseSky'],
  count: number = SKY_DIRECTION_COUNT,
): SkyDirections {
  const goldenAngleRad = degToRad(180 * (3 - Math.sqrt(5)));
  const altitudeRad = new Float64Array(count);
  const azimuthRad = new Float64Array(count);
  const share = new Float64Array(count);
  let sum = 0;
  for (let k = 0; k < count; k++) {
    const sinAltitude = Math.sqrt(1 - (k + 0.5) / count);
    altitudeRad[k] = Math.asin(sinAltitude);
    azimuthRad[k] = (k * goldenAngleRad) % (2 * Math.PI);
    share[k] = sky === 'isotropic' ? 1 : (1 + 2 * sinAltitude) / 3;
    sum += share[k];
  }
  for (let k = 0; k < count; k++) share[k] /= sum;
  return { count, altitudeRad, azimuthRad, share };
}
