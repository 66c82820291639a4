import { BadInputError } from '../units/bad-input.ts';

/** A day as it was written, YYYY-MM-DD. @throws BadInputError when it is no day of the calendar. */
export function readDate(date: string): string {
  const ms = /^\d{4}-\d{2}-\d{2}$/.test(date) ? Date.parse(`${date}T00:00:00Z`) : Number.NaN;
  if (Number.isNaN(ms) || new Date(ms).toISOString().slice(0, 10) !== date)
    throw new BadInputError(`The date is ${JSON.stringify(date)}; expected a day such as 2027-06-21.`);
  return date;
}
