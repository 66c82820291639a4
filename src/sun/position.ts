/**
 * Where the sun stands, from suncalc 2 (Meeus, Astronomical Algorithms, ch. 25; within 0.016 degrees of a full
 * ephemeris). Its altitude is apparent: the air's refraction is always added. Shadows here are cut by the airless
 * altitude of the sun's centre, so the refraction comes off again.
 */
import { getPosition } from 'suncalc';
import { degToRad, type TrueAzimuthRad, trueAzimuthFromDeg } from '../units/angle.ts';

export interface SunPosition {
  /** Airless altitude of the sun's centre above the horizontal, radians. */
  readonly altitudeRad: number;
  readonly azimuthRad: TrueAzimuthRad;
}

/** Refraction as suncalc adds it (Meeus eq. 16.4, held at its horizon value below the horizon), radians. */
function refractionRad(airlessRad: number): number {
  const h = Math.max(0, airlessRad);
  return 0.0002967 / Math.tan(h + 0.00312536 / (h + 0.08901179));
}

/** Altitude at which the sun's centre is seen through the air, radians: what casts a shadow outside. */
export const apparentAltitudeRad = (airlessRad: number): number => airlessRad + refractionRad(airlessRad);

/** @param utcMs milliseconds since 1970 UTC; @param latDeg,lonDeg WGS 84. */
export function sunPosition(utcMs: number, latDeg: number, lonDeg: number): SunPosition {
  const { altitude, azimuth } = getPosition(new Date(utcMs), latDeg, lonDeg);
  const apparentRad = degToRad(altitude);
  let altitudeRad = apparentRad;
  // The inverse of the refraction by fixed point; six rounds are exact to a double near the horizon.
  for (let i = 0; i < 6; i++) altitudeRad = apparentRad - refractionRad(altitudeRad);
  return { altitudeRad, azimuthRad: trueAzimuthFromDeg(azimuth) };
}
