/**
 * The sun's way over the sky on the days that mark the year, with the hours of the site's clocks on it: both
 * solstices, both equinoxes, and the middle day of a month.
 */
import { radToDeg } from '../units/angle.ts';
import { civilYear } from './civil-year.ts';
import { sunPosition } from './position.ts';
import { clockReader } from './site-clock.ts';

const STEP_MS = 300_000;
/** Every zone's clocks differ from UTC by a whole number of these. */
const CLOCK_STEP_MS = 900_000;

export type SunPathDay =
  | 'june-solstice'
  | 'december-solstice'
  | 'march-equinox'
  | 'september-equinox'
  | 'month';

export interface SunPath {
  readonly which: SunPathDay;
  /** 0 = January. */
  readonly month: number;
  readonly dayOfMonth: number;
  /** What the clocks show at noon: "Atlantic Daylight Time". */
  readonly clock: string;
  readonly daylightSaving: boolean;
  /** Azimuth from true north and airless altitude, degrees, in turn; every five minutes, from the horizon to the horizon. */
  readonly points: Float32Array;
  /** Full hours of the clock with the sun up, in the order of the day. */
  readonly hours: readonly SunPathHour[];
}
export interface SunPathHour {
  /** 0 to 23. */
  readonly clockHour: number;
  readonly azimuthDeg: number;
  readonly altitudeDeg: number;
}

/** The middle day of a month as it is drawn, counted from 1. */
export const MIDDLE_DAY = 15;

/**
 * @param month 0 = January: the month whose middle day is given last
 * @throws BadInputError when the time zone is not known.
 */
export function sunPaths(
  calendarYear: number,
  timeZone: string,
  latDeg: number,
  lonDeg: number,
  month: number,
): SunPath[] {
  const { dayStartMs, monthOfDay } = civilYear(calendarYear, timeZone);
  const clock = clockReader(timeZone, calendarYear);
  const firstDay = (m: number) => monthOfDay.indexOf(m);
  const noonMs = (day: number) => (dayStartMs[day] + dayStartMs[day + 1]) / 2;

  /** The day of a month whose noon lies nearest to the moment at which `measure` is least: the civil day that holds it. */
  const dayOfLeast = (m: number, measure: (declinationRad: number) => number): number => {
    let best = firstDay(m);
    for (let day = best; day < monthOfDay.length && monthOfDay[day] === m; day++)
      if (measure(declinationRad(noonMs(day))) < measure(declinationRad(noonMs(best)))) best = day;
    return best;
  };

  const path = (which: SunPathDay, day: number): SunPath => {
    const { name, daylightSaving } = clock.zoneAt(noonMs(day));
    return {
      which,
      month: monthOfDay[day],
      dayOfMonth: day - firstDay(monthOfDay[day]) + 1,
      clock: name,
      daylightSaving,
      points: pointsOf(dayStartMs[day], dayStartMs[day + 1]),
      hours: hoursOf(dayStartMs[day], dayStartMs[day + 1]),
    };
  };

  function pointsOf(fromMs: number, untilMs: number): Float32Array {
    const points: number[] = [];
    let before = seen(fromMs);
    for (let ms = fromMs + STEP_MS; ms <= untilMs; ms += STEP_MS) {
      const here = seen(ms);
      // Where it rises or sets between two steps the path begins or ends on the horizon itself.
      if (here.altitudeDeg > 0 !== before.altitudeDeg > 0) {
        const share = before.altitudeDeg / (before.altitudeDeg - here.altitudeDeg);
        const turn = ((here.azimuthDeg - before.azimuthDeg + 540) % 360) - 180;
        points.push((before.azimuthDeg + share * turn + 360) % 360, 0);
      }
      if (here.altitudeDeg > 0) points.push(here.azimuthDeg, here.altitudeDeg);
      before = here;
    }
    return Float32Array.from(points);
  }

  function hoursOf(fromMs: number, untilMs: number): SunPathHour[] {
    const hours: SunPathHour[] = [];
    for (let ms = fromMs; ms < untilMs; ms += CLOCK_STEP_MS) {
      const { hour, minute } = clock.timeAt(ms);
      if (minute !== 0) continue;
      const { azimuthDeg, altitudeDeg } = seen(ms);
      if (altitudeDeg > 0) hours.push({ clockHour: hour, azimuthDeg, altitudeDeg });
    }
    return hours;
  }

  function seen(utcMs: number): { azimuthDeg: number; altitudeDeg: number } {
    const sun = sunPosition(utcMs, latDeg, lonDeg);
    return { azimuthDeg: (radToDeg(sun.azimuthRad) + 360) % 360, altitudeDeg: radToDeg(sun.altitudeRad) };
  }

  return [
    path(
      'june-solstice',
      dayOfLeast(5, (declination) => -declination),
    ),
    path(
      'december-solstice',
      dayOfLeast(11, (declination) => declination),
    ),
    path('march-equinox', dayOfLeast(2, Math.abs)),
    path('september-equinox', dayOfLeast(8, Math.abs)),
    path('month', firstDay(month) + MIDDLE_DAY - 1),
  ];
}

/** Declination of the sun, radians: at the north pole it is the sun's altitude. */
const declinationRad = (utcMs: number): number => sunPosition(utcMs, 90, 0).altitudeRad;
