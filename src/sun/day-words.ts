import { clockReader } from './site-clock.ts';

/** Days of the calendar as they are said; YYYY-MM-DD in. */

/** "21 June 2027", or with the day of the week "Monday 21 June 2027". */
export const dayWords = (date: string, withWeekday = false): string =>
  new Intl.DateTimeFormat('en-GB', {
    timeZone: 'UTC',
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    ...(withWeekday ? { weekday: 'long' } : {}),
  })
    .format(Date.parse(`${date}T12:00:00Z`))
    .replace(',', '');

/** The day after. */
export const nextDay = (date: string): string =>
  new Date(Date.parse(`${date}T12:00:00Z`) + 86_400_000).toISOString().slice(0, 10);

/** What clocks a time is read on: "clocks on Atlantic Daylight Time (summer time)". */
export function clocksWords(utcMs: number, timeZone: string): string {
  const { name, daylightSaving } = clockReader(timeZone, new Date(utcMs).getUTCFullYear()).zoneAt(utcMs);
  return `clocks on ${name}${daylightSaving && !/daylight|summer/i.test(name) ? ' (summer time)' : ''}`;
}
