import type { WeatherHour } from './weather-table.ts';

/** How files say that they hold a typical or a design year: in words, or by the names of the usual sets of such years. */
const SAYS_TYPICAL =
  /typical|test ref(?:erence)? year|reference year|design (?:summer|reference|year)|\b(?:TMY|TRY|IWEC|CWEC|WYEC|RMY|DSY)\w*/i;
/** A span this much longer than its hours has holes that only months of different years leave. */
const MOST_SPAN = 1.1;
const HOUR_MS = 3_600_000;

/** Why a header says that its hours are a typical year, as a clause; null: it does not say so. */
export function typicalByHeader(texts: readonly string[]): string | null {
  for (const text of texts) {
    const found = SAYS_TYPICAL.exec(text);
    if (found) return `its header says "${found[0]}"`;
  }
  return null;
}

/** Why the stamps of hours show that they are a typical year, as a clause; null: they follow one another. */
export function typicalByYears(
  hours: readonly Pick<WeatherHour, 'year' | 'month' | 'day' | 'hourEnd'>[],
): string | null {
  const years = hours.map(({ year }) => year ?? 0);
  const [first, last] = [Math.min(...yearsOf(years)), Math.max(...yearsOf(years))];
  if (first === 0) return 'it does not say in which year its hours were measured';
  if (first === last) return null;
  const times = hours.map(({ year, month, day, hourEnd }) => Date.UTC(year ?? 0, month - 1, day, hourEnd));
  const follows = times.every((time, i) => i === 0 || time > times[i - 1]);
  const spanHours = (times[times.length - 1] - times[0]) / HOUR_MS;
  if (follows && spanHours <= MOST_SPAN * hours.length) return null;
  return `its months are of different years, ${first} to ${last}`;
}

const yearsOf = (years: readonly number[]): number[] => [...new Set(years)];
