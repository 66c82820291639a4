import type { SiteDocument } from '../site/document.ts';
import type { WeatherTable } from '../sun/weather/weather-table.ts';
import { type ClimateFacts, climateFacts } from '../wind/climate-facts.ts';
import { type SiteClimate, siteClimate } from '../wind/site-climate.ts';
import { growingDays } from './growing-days.ts';
import { siteCentre } from './site-ground.ts';

/** The open wind of a site with what is read of it. */
export interface SiteWind extends SiteClimate {
  readonly facts: ClimateFacts;
  /** Share of the year's days in the growing season. */
  readonly growingShare: number;
}

/** The wind as the shelter engine takes it in the site's base year. Throws BadInputError where it cannot be made. */
export function siteWind(document: SiteDocument, weather: WeatherTable | null): SiteWind {
  const { site } = document;
  const [, latDeg] = siteCentre(document);
  const growingDay = growingDays(site, latDeg, site.baseYear);
  const made = siteClimate(site.wind, weather, growingDay);
  const facts = climateFacts(made.climate, growingDay);
  return { ...made, facts, growingShare: facts.growing.hours / (facts.growing.hours + facts.rest.hours) };
}
