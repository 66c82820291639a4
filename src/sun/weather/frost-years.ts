import type { WeatherTable } from './weather-table.ts';

/** A day of a calendar year. */
export interface CalendarDay {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}
/** The last spring frost or the first autumn frost of a year: the coldest that day, degrees C; null: there was none. */
export interface FrostOfYear {
  readonly year: number;
  readonly frost: (CalendarDay & { readonly leastC: number }) | null;
}
/** Degree-days of a growing season. */
export interface HeatOfYear {
  readonly year: number;
  readonly above5: number;
  readonly above10: number;
}

/** Frosts and heat as they were measured, by calendar year; years that are not whole enough are left out. */
export interface FrostYears {
  readonly springs: readonly FrostOfYear[];
  readonly autumns: readonly FrostOfYear[];
  readonly heat: readonly HeatOfYear[];
}

const DAY_MS = 86_400_000;
/** A day with fewer hours of temperature is not known. */
const LEAST_HOURS = 20;
/** Of a half year, or of a growing season, that must be known for it to be told. */
const LEAST_SHARE = 0.95;
/** Air as cold as this where it is measured. */
const FROST_C = 0;

interface Day extends CalendarDay {
  readonly number: number;
  readonly leastC: number;
  readonly mostC: number;
}

/**
 * Last spring frost (the latest day at 0 degrees C or below before midsummer), first autumn frost, and heat sums over the
 * growing season: daily (greatest + least) / 2 less the base, nothing where that is below it (McMaster & Wilhelm 1997,
 * Agricultural and Forest Meteorology 87:291-300, method 1); bases 5 and 10 degrees (common practice, no source).
 * @param south whether midsummer is in January. @param isGrowing whether a day, month 1 to 12, is in the growing season.
 * @returns null where the hours are a typical year: its extremes are those of no year.
 */
export function frostYears(
  table: WeatherTable,
  south: boolean,
  isGrowing: (month: number, day: number) => boolean,
): FrostYears | null {
  if (table.typical !== null) return null;
  const days = daysOf(table);
  const years = [...new Set(days.map(({ year }) => year))];
  const midsummer = south ? { month: 1, day: 15 } : { month: 7, day: 15 };
  return {
    springs: years.flatMap((year) => {
      // In the south the spring of a year runs to the midsummer of the next.
      const to = dayNumber(south ? year + 1 : year, midsummer.month, midsummer.day);
      const half = between(days, south ? dayNumber(year, 7, 1) : dayNumber(year, 1, 1), to);
      return half ? [{ year, frost: half.findLast(isFrost) ?? null }] : [];
    }),
    autumns: years.flatMap((year) => {
      const to = south ? dayNumber(year, 7, 1) : dayNumber(year + 1, 1, 1);
      const half = between(days, dayNumber(year, midsummer.month, midsummer.day), to);
      return half ? [{ year, frost: half.find(isFrost) ?? null }] : [];
    }),
    heat: years.flatMap((year) => {
      const season = days.filter((day) => day.year === year && isGrowing(day.month, day.day));
      if (season.length < LEAST_SHARE * seasonLength(year, isGrowing)) return [];
      const above = (baseC: number) =>
        season.reduce((sum, { leastC, mostC }) => sum + Math.max(0, (leastC + mostC) / 2 - baseC), 0);
      return [{ year, above5: above(5), above10: above(10) }];
    }),
  };
}

const dayNumber = (year: number, month: number, day: number): number =>
  Date.UTC(year, month - 1, day) / DAY_MS;
const isFrost = ({ leastC }: Day): boolean => leastC <= FROST_C;

/** Days with enough hours, in calendar order. */
function daysOf({ hourCount, year, month, day, temperatureC }: WeatherTable): Day[] {
  const days = new Map<number, { leastC: number; mostC: number; hours: number; at: number }>();
  for (let i = 0; i < hourCount; i++) {
    const value = temperatureC[i];
    if (Number.isNaN(value) || year[i] === 0) continue;
    const number = dayNumber(year[i], month[i], day[i]);
    const known = days.get(number) ?? { leastC: value, mostC: value, hours: 0, at: i };
    days.set(number, {
      leastC: Math.min(known.leastC, value),
      mostC: Math.max(known.mostC, value),
      hours: known.hours + 1,
      at: known.at,
    });
  }
  return [...days]
    .filter(([, { hours }]) => hours >= LEAST_HOURS)
    .sort(([a], [b]) => a - b)
    .map(([number, { leastC, mostC, at }]) => ({
      number,
      leastC,
      mostC,
      year: year[at],
      month: month[at],
      day: day[at],
    }));
}

/** The days from one to before another; null where too few of them are known. */
function between(days: readonly Day[], from: number, to: number): Day[] | null {
  const half = days.filter(({ number }) => number >= from && number < to);
  return half.length >= LEAST_SHARE * (to - from) ? half : null;
}

function seasonLength(year: number, isGrowing: (month: number, day: number) => boolean): number {
  let count = 0;
  for (let number = dayNumber(year, 1, 1); number < dayNumber(year + 1, 1, 1); number++) {
    const date = new Date(number * DAY_MS);
    if (isGrowing(date.getUTCMonth() + 1, date.getUTCDate())) count++;
  }
  return count;
}
