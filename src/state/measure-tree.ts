import type { LonLat } from '../geo/frame.ts';
import { heightFromAngle, heightFromShadow, heightFromStick } from '../growth/measure-height.ts';
import { utcOfClock } from '../sun/clock-time.ts';
import { sunPosition } from '../sun/position.ts';
import { degToRad, radToDeg } from '../units/angle.ts';
import { BadInputError } from '../units/bad-input.ts';

/** A tree's height as a person measures it: degrees, metres and clock time in, metres out. */

export const heightByAngle = (sighting: {
  readonly distanceM: number;
  readonly eyeHeightM: number;
  readonly topDeg: number;
  readonly footDeg: number | null;
}): number =>
  heightFromAngle({
    distanceM: sighting.distanceM,
    distanceIs: sighting.footDeg === null ? 'level' : 'along the ground',
    eyeHeightM: sighting.eyeHeightM,
    topAngleRad: degToRad(sighting.topDeg),
    footAngleRad: sighting.footDeg === null ? undefined : degToRad(sighting.footDeg),
  });

export const heightByStick = heightFromStick;

/** @throws BadInputError when the sun was not up, or the date or time cannot be read. */
export function heightByShadow(shadow: {
  readonly shadowM: number;
  /** YYYY-MM-DD and HH:MM on the clocks of `timeZone`. */
  readonly date: string;
  readonly time: string;
  readonly timeZone: string;
  readonly lonLat: LonLat;
  readonly riseDeg: number;
}): { heightM: number; sunAltitudeDeg: number; sunAzimuthDeg: number } {
  const utcMs = utcOfClock(shadow.date, shadow.time, shadow.timeZone);
  if (utcMs === null) throw new BadInputError('The day or the clock time is missing: expected both.');
  const sun = sunPosition(utcMs, shadow.lonLat[1], shadow.lonLat[0]);
  if (sun.altitudeRad <= 0)
    throw new BadInputError(
      'The sun was not up at that time: check the day, the clock time and the time zone.',
    );
  return {
    heightM: heightFromShadow(shadow.shadowM, sun.altitudeRad, degToRad(shadow.riseDeg)),
    sunAltitudeDeg: radToDeg(sun.altitudeRad),
    sunAzimuthDeg: radToDeg(sun.azimuthRad),
  };
}
