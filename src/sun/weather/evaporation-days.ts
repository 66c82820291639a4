import type { EvaporationDay } from '../penman-monteith.ts';
import { saturationKPa } from '../vapour.ts';
import type { WeatherTable } from './weather-table.ts';

/** Hours of a day that must have a value for the day to count. */
const LEAST_HOURS = 20;
const SECONDS_AN_HOUR = 3600;

/** A day of a weather file, with its mean wind at the file's own height. */
export interface WindyDay extends EvaporationDay {
  readonly windMps: number;
}

interface Tally {
  hours: number;
  sum: number;
  least: number;
  most: number;
}
const newTally = (): Tally => ({
  hours: 0,
  sum: 0,
  least: Number.POSITIVE_INFINITY,
  most: Number.NEGATIVE_INFINITY,
});
function count(tally: Tally, value: number): void {
  if (Number.isNaN(value)) return;
  tally.hours++;
  tally.sum += value;
  tally.least = Math.min(tally.least, value);
  tally.most = Math.max(tally.most, value);
}
const mean = ({ sum, hours }: Tally): number => sum / hours;

/**
 * Days of an hourly file as evaporation takes them: least and greatest temperature, mean vapour pressure from the dew
 * points (FAO-56 eq. 14), sum of global radiation, mean wind. A day without 20 hours of each is left out; hours that
 * are missing count as the mean of those that are there. Of several years each day of each.
 */
export function evaporationDays(table: WeatherTable): WindyDay[] {
  const days = new Map<string, { dayOfYear: number } & Record<'warmth' | 'vapour' | 'sun' | 'wind', Tally>>();
  for (let i = 0; i < table.hourCount; i++) {
    const dayOfYear =
      (Date.UTC(2023, table.month[i] - 1, table.day[i]) - Date.UTC(2022, 11, 31)) / 86_400_000;
    if (table.month[i] === 2 && table.day[i] === 29) continue;
    const key = `${table.year[i]} ${dayOfYear}`;
    const tallies = days.get(key) ?? {
      dayOfYear,
      warmth: newTally(),
      vapour: newTally(),
      sun: newTally(),
      wind: newTally(),
    };
    days.set(key, tallies);
    count(tallies.warmth, table.temperatureC[i]);
    count(tallies.vapour, saturationKPa(table.dewPointC[i]));
    count(tallies.sun, table.globalWm2[i]);
    count(tallies.wind, table.windSpeedMps[i]);
  }
  return [...days.values()]
    .filter(({ warmth, vapour, sun, wind }) =>
      [warmth, vapour, sun, wind].every(({ hours }) => hours >= LEAST_HOURS),
    )
    .sort((a, b) => a.dayOfYear - b.dayOfYear)
    .map(({ dayOfYear, warmth, vapour, sun, wind }) => ({
      dayOfYear,
      leastC: warmth.least,
      mostC: warmth.most,
      vapourKPa: mean(vapour),
      globalMJ: (mean(sun) * 24 * SECONDS_AN_HOUR) / 1e6,
      windMps: mean(wind),
    }));
}
