import type { DayOfMonth, FirstLastSun } from '../light/first-last-sun-types.ts';
import { cellCount } from '../numeric/grid.ts';
import { clockOfUtc } from '../sun/clock-time.ts';
import type { BandSet } from '../units/bands.ts';
import { MONTHS } from '../units/months.ts';
import type { AppState, Picture } from './model.ts';

export type SunTime = 'first-sun' | 'last-sun';
export const isSunTime = (picture: Picture): picture is SunTime =>
  picture === 'first-sun' || picture === 'last-sun';

const JUNE = 5;
const DECEMBER = 11;

/** The month whose day is shown: the chosen one; without one that of the longest day. */
export const monthOfSun = ({ period, centre }: Pick<AppState, 'period' | 'centre'>): number =>
  typeof period === 'number' ? period : centre[1] >= 0 ? JUNE : DECEMBER;

export const dayInWords = ({ days }: FirstLastSun, month: number): string =>
  `${days[month].dayOfMonth} ${MONTHS[month]}`;

/** Hours of the clock, one a cell; NaN where there is no sun all day, inside buildings and where ground is missing. */
export function sunTimeOf(result: FirstLastSun, picture: SunTime, month: number): Float32Array {
  const cells = cellCount(result.grid);
  const minutes = picture === 'first-sun' ? result.firstMin : result.lastMin;
  return minutes.subarray(month * cells, (month + 1) * cells).map((each) => each / 60);
}

/** Beyond every hour of a day: ground without sun is the last band of the one map and the first of the other. */
const NEVER_FIRST = 48;
const NEVER_LAST = -24;

/** The same for the map: ground that has no sun all day has a value of its own. */
export function sunTimeToInk(result: FirstLastSun, picture: SunTime, month: number): Float32Array {
  const cells = cellCount(result.grid);
  const never = picture === 'first-sun' ? NEVER_FIRST : NEVER_LAST;
  return sunTimeOf(result, picture, month).map((hour, cell) =>
    result.sunHours[month * cells + cell] === 0 ? never : hour,
  );
}

const LIGHT_TO_DARK = ['#f4ecc6', '#d3cc96', '#9eac7c', '#68806e', '#3f5254'];
const NO_SUN = { name: 'no sun that day', ink: '#232d2e' };
/** The band beside sunrise or sunset is at least this long, hours. */
const LEAST_BAND_HOURS = 0.5;

/** Bands by the full hours of the clock after sunrise, or before sunset, of the day that is shown. */
export function sunTimeBands({ days }: FirstLastSun, picture: SunTime, month: number): BandSet {
  const { riseMin, setMin } = days[month];
  const clock = (hour: number) => `${((hour % 24) + 24) % 24}:00`;
  if (picture === 'first-sun') {
    const limit = Math.floor((riseMin ?? 0) / 60 + LEAST_BAND_HOURS) + 1;
    return {
      quantity: 'First sun of the day',
      unit: 'clock',
      bands: [
        ...LIGHT_TO_DARK.map((ink, i) => ({
          name:
            i === 0
              ? `before ${clock(limit)}`
              : i === LIGHT_TO_DARK.length - 1
                ? `after ${clock(limit + i - 1)}`
                : `${clock(limit + i - 1)} to ${clock(limit + i)}`,
          from: i === 0 ? NEVER_LAST : limit + i - 1,
          ink,
        })),
        { ...NO_SUN, from: NEVER_FIRST - 1 },
      ],
    };
  }
  const limit = Math.ceil((setMin ?? 24 * 60) / 60 - LEAST_BAND_HOURS) - 1;
  const darkFirst = LIGHT_TO_DARK.map((ink, i) => ({
    name:
      i === 0
        ? `after ${clock(limit)}`
        : i === LIGHT_TO_DARK.length - 1
          ? `before ${clock(limit - i + 1)}`
          : `${clock(limit - i)} to ${clock(limit - i + 1)}`,
    from: i === LIGHT_TO_DARK.length - 1 ? NEVER_LAST + 1 : limit - i,
    ink,
  })).reverse();
  return {
    quantity: 'Last sun of the day',
    unit: 'clock',
    bands: [{ ...NO_SUN, from: NEVER_LAST }, ...darkFirst],
  };
}

/** What the site's clocks show. */
const clockAt = ({ midnightMs }: DayOfMonth, minute: number, timeZone: string): string =>
  clockOfUtc(midnightMs + minute * 60_000, timeZone).time;

/** The sun of a cell on the day that is shown: "07:12 to 19:40, 9.8 h"; null where there is no value. */
export function sunOfCell(
  result: FirstLastSun,
  month: number,
  cell: number,
  timeZone: string,
): string | null {
  const at = month * cellCount(result.grid) + cell;
  const hours = result.sunHours[at];
  if (Number.isNaN(hours)) return null;
  if (hours === 0) return 'none all day';
  const day = result.days[month];
  const [first, last] = [result.firstMin[at], result.lastMin[at]].map((minute) =>
    clockAt(day, minute, timeZone),
  );
  return `${first} to ${last}, ${hours.toFixed(1)} h`;
}
