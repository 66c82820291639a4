import {
  drawnRecord,
  onSixteen,
  type Pull,
  pulled,
  type RoseSeason,
  restsWords,
  withCalms,
  yearOf,
} from '../jobs/wind-words.ts';
import { type SiteWind, siteWind } from '../scene/site-wind.ts';
import { setSite } from '../site/actions/set-site.ts';
import type { SiteDocument } from '../site/document.ts';
import type { WindRecord } from '../site/records/site.ts';
import type { WeatherTable } from '../sun/weather/weather-table.ts';
import { BadInputError } from '../units/bad-input.ts';
import type { AppState } from './model.ts';

export { BEAUFORT_SCALE, ROUGHNESS_CLASSES, type RoseSeason } from '../jobs/wind-words.ts';
export type { SiteWind } from '../scene/site-wind.ts';
export type { SeasonFacts } from '../wind/climate-facts.ts';

type Answer = { readonly wind: SiteWind } | { readonly wrong: string };
let last: { parts: readonly unknown[]; answer: Answer } | null = null;

function answerOf(document: SiteDocument, weather: WeatherTable | null): Answer {
  try {
    return { wind: siteWind(document, weather) };
  } catch (reason) {
    if (!(reason instanceof BadInputError)) throw reason;
    return { wrong: reason.message };
  }
}

type Needs = Pick<AppState, 'document' | 'centre' | 'weather'>;

/** The wind of the open site, or the sentence that says why there is none. The same object while nothing changed. */
export function windOfSite({ document, centre, weather }: Needs): Answer {
  const { wind, growingSeason, baseYear } = document.site;
  const parts = [wind, growingSeason, baseYear, centre[1], weather];
  if (last && parts.every((part, index) => Object.is(part, last?.parts[index]))) return last.answer;
  last = { parts, answer: answerOf(document, weather) };
  return last.answer;
}

/** What a hand sees of a wind: the sixteen directions of a season and its calms. */
export function roseOf(wind: SiteWind, season: RoseSeason) {
  const { climate, growingShare } = wind;
  return season === 'year' ? yearOf(climate, growingShare) : onSixteen(climate[season]);
}

const drawn = (document: SiteDocument, record: ReturnType<typeof drawnRecord>): SiteDocument =>
  setSite(document, { wind: record as WindRecord });

/** The document with one direction of its wind pulled. From then on the wind is one drawn by hand, the site's own. */
export function pullWind(
  document: SiteDocument,
  weather: WeatherTable | null,
  season: RoseSeason,
  pull: Pull,
): SiteDocument {
  const { climate, growingShare } = siteWind(document, weather);
  return drawn(document, drawnRecord(pulled(climate, season, pull, growingShare)));
}

/** The document with other calms in its wind. */
export function setCalms(
  document: SiteDocument,
  weather: WeatherTable | null,
  season: RoseSeason,
  calmShare: number,
): SiteDocument {
  const { climate } = siteWind(document, weather);
  const sixteen = { ...climate, growing: onSixteen(climate.growing), rest: onSixteen(climate.rest) };
  return drawn(document, drawnRecord(withCalms(sixteen, season, calmShare)));
}

/** What a site would have with another wind, for a look before it is taken; the sentence where it would have none. */
export const windWith = (
  { document, weather }: Pick<AppState, 'document' | 'weather'>,
  wind: WindRecord,
): Answer => answerOf({ ...document, site: { ...document.site, wind } }, weather);

/** What the wind rests on, in sentences. */
export const windRestsOn = ({ document }: Pick<AppState, 'document'>, wind: SiteWind): string[] =>
  restsWords(wind.rests, document.site.weatherFile);
