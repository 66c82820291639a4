/** The days and months of a calendar year, cut at midnight of a time zone's clocks. */
import { BadInputError } from '../units/bad-input.ts';

export interface CivilYear {
  /** UTC milliseconds at which each day begins, and the end of the last: days + 1 long. */
  readonly dayStartMs: Float64Array;
  /** 0 January to 11 December, one a day. */
  readonly monthOfDay: Uint8Array;
  readonly daysInMonth: Uint8Array;
}

/** @throws BadInputError when the time zone is not an IANA name this machine knows. */
export function civilYear(year: number, timeZone: string): CivilYear {
  let clock: Intl.DateTimeFormat;
  try {
    clock = new Intl.DateTimeFormat('en-US', {
      timeZone,
      hourCycle: 'h23',
      year: 'numeric',
      month: 'numeric',
      day: 'numeric',
      hour: 'numeric',
      minute: 'numeric',
      second: 'numeric',
    });
  } catch {
    throw new BadInputError(
      `The site's timeZone is "${timeZone}"; expected an IANA name such as "America/Halifax".`,
    );
  }
  const clockMinusUtcMs = (utcMs: number): number => {
    const part: Record<string, number> = {};
    for (const { type, value } of clock.formatToParts(utcMs)) part[type] = Number(value);
    return Date.UTC(part.year, part.month - 1, part.day, part.hour, part.minute, part.second) - utcMs;
  };
  const days = (Date.UTC(year + 1, 0, 1) - Date.UTC(year, 0, 1)) / 86_400_000;
  const dayStartMs = new Float64Array(days + 1);
  const monthOfDay = new Uint8Array(days);
  const daysInMonth = new Uint8Array(12);
  for (let day = 0; day <= days; day++) {
    const midnightMs = Date.UTC(year, 0, 1 + day);
    const firstGuessMs = midnightMs - clockMinusUtcMs(midnightMs);
    dayStartMs[day] = midnightMs - clockMinusUtcMs(firstGuessMs);
    if (day === days) break;
    monthOfDay[day] = new Date(midnightMs).getUTCMonth();
    daysInMonth[monthOfDay[day]]++;
  }
  return { dayStartMs, monthOfDay, daysInMonth };
}

/** Index of the civil day an instant falls in; instants outside the year fall to its first or last day. */
export function dayOfInstant(year: CivilYear, utcMs: number): number {
  const { dayStartMs } = year;
  const last = dayStartMs.length - 2;
  let day = Math.min(last, Math.max(0, Math.floor((utcMs - dayStartMs[0]) / 86_400_000)));
  // Clock changes shift midnights by an hour or so.
  while (day < last && utcMs >= dayStartMs[day + 1]) day++;
  while (day > 0 && utcMs < dayStartMs[day]) day--;
  return day;
}
