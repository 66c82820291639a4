import type { SiteDocument } from '../site/document.ts';
import { frostSentences } from '../sun/weather/frost-words.ts';
import { type FrostYears, frostYears } from '../sun/weather/frost-years.ts';
import type { WeatherTable } from '../sun/weather/weather-table.ts';
import { growingDays } from './growing-days.ts';
import { siteCentre } from './site-ground.ts';

/** What a site's weather file tells of frosts and heat. */
export interface SiteFrosts {
  /** Null: it cannot tell; the sentences say why. */
  readonly found: FrostYears | null;
  readonly sentences: readonly string[];
}

/** A year that is no leap year. */
const ANY_YEAR = 2023;

/** Frosts and heat sums of the real years in the weather file; a typical year is not used for extremes, and that is said. */
export function siteFrosts(document: SiteDocument, weather: WeatherTable | null): SiteFrosts {
  const { weatherFile } = document.site;
  if (!weather)
    return {
      found: null,
      sentences: ['Last frosts and heat sums need an hourly weather file of real years with a temperature.'],
    };
  if (weather.typical !== null)
    return {
      found: null,
      sentences: [
        `${weatherFile ?? 'The weather file'} is a typical year (${weather.typical}): the middle of many years is not used for frosts and heat, whose extremes it leaves out. An hourly file of real years with a temperature tells them.`,
      ],
    };
  if (weather.temperatureC.every(Number.isNaN))
    return {
      found: null,
      sentences: [
        `${weatherFile ?? 'The weather file'} has no temperatures, so it tells neither frosts nor heat sums.`,
      ],
    };
  const [, latDeg] = siteCentre(document);
  const growing = growingDays(document.site, latDeg, ANY_YEAR);
  const found = frostYears(weather, latDeg < 0, (month, day) => {
    const inYear = (Date.UTC(ANY_YEAR, month - 1, day) - Date.UTC(ANY_YEAR, 0, 1)) / 86_400_000;
    return growing[inYear] === 1;
  });
  const place = weather.place === '' ? 'where it was measured' : `at ${weather.place}`;
  return {
    found,
    sentences: [
      ...(found ? frostSentences(found) : []),
      `Air ${place}, as the file has it: on clear nights a hollow is colder.`,
    ],
  };
}
