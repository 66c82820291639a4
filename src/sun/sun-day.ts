/** One day's sun at a place: from when to when it stands above the horizon. */
import { civilYear } from './civil-year.ts';
import { sunPosition } from './position.ts';

const MINUTE_MS = 60_000;
const SEARCH_STEP_MS = 5 * MINUTE_MS;
/** The sun stays up no longer than this to either side of its highest. */
const HALF_DAY_MS = 12 * 60 * MINUTE_MS;

export interface SunDay {
  /** Index of the day in its calendar year, 0 = 1 January. */
  readonly day: number;
  /** Where the site's clocks stand at midnight, UTC milliseconds: the day's minutes are counted from here. */
  readonly midnightMs: number;
  /** Minutes after midnight; both null where the sun does not come up. */
  readonly riseMin: number | null;
  readonly setMin: number | null;
}

/**
 * The span about the day's highest sun in which its centre stands above an altitude. Near the poles it may begin before
 * midnight or end after the next.
 * @param month 0 = January; @param dayOfMonth counted from 1.
 * @param aboveRad airless altitude of the centre that counts as up: 0, or that of a horizon.
 * @throws BadInputError when the time zone is not known.
 */
export function sunDay(
  calendarYear: number,
  timeZone: string,
  latDeg: number,
  lonDeg: number,
  month: number,
  dayOfMonth: number,
  aboveRad = 0,
): SunDay {
  const { dayStartMs, monthOfDay } = civilYear(calendarYear, timeZone);
  const day = monthOfDay.indexOf(month) + dayOfMonth - 1;
  const midnightMs = dayStartMs[day];
  const heightOver = (utcMs: number) => sunPosition(utcMs, latDeg, lonDeg).altitudeRad - aboveRad;
  let noonMs = midnightMs;
  for (let ms = midnightMs; ms < dayStartMs[day + 1]; ms += SEARCH_STEP_MS)
    if (heightOver(ms) > heightOver(noonMs)) noonMs = ms;
  if (heightOver(noonMs) <= 0) return { day, midnightMs, riseMin: null, setMin: null };
  /** Where the sun crosses the altitude, going from noon in steps of one sign; the end of the search where it does not. */
  const crossing = (stepMs: number): number => {
    for (let away = Math.abs(stepMs); away <= HALF_DAY_MS; away += Math.abs(stepMs)) {
      let outside = noonMs + Math.sign(stepMs) * away;
      if (heightOver(outside) > 0) continue;
      let inside = outside - stepMs;
      while (Math.abs(inside - outside) > 500) {
        const middle = (inside + outside) / 2;
        if (heightOver(middle) > 0) inside = middle;
        else outside = middle;
      }
      return inside;
    }
    return noonMs + Math.sign(stepMs) * HALF_DAY_MS;
  };
  return {
    day,
    midnightMs,
    riseMin: (crossing(-SEARCH_STEP_MS) - midnightMs) / MINUTE_MS,
    setMin: (crossing(SEARCH_STEP_MS) - midnightMs) / MINUTE_MS,
  };
}
