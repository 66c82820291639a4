import lookUp from '@photostructure/tz-lookup';
import type { LonLat } from '../geo/frame.ts';

/** IANA time zone of a place, from a boundary file built into the library. */
export const timeZoneAt = ([lonDeg, latDeg]: LonLat): string => lookUp(latDeg, lonDeg);

/** True for a name that this machine's calendar knows. */
export function isTimeZone(name: string): boolean {
  try {
    new Intl.DateTimeFormat('en', { timeZone: name });
    return true;
  } catch {
    return false;
  }
}
