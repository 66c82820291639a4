import { toLocal } from '../geo/frame.ts';
import { type EvenTable, evenTable } from '../numeric/even-table.ts';
import { sampleGrid } from '../numeric/grid.ts';
import type { SiteDocument } from '../site/document.ts';
import { evaporationMm, windDries, windTerms } from '../sun/penman-monteith.ts';
import { evaporationDays } from '../sun/weather/evaporation-days.ts';
import { seasonMeanMps } from '../wind/climate-from-hours.ts';
import { speedAt2mOverGrass } from '../wind/profile.ts';
import type { WindClimate } from '../wind/shelter-types.ts';
import { growingDays } from './growing-days.ts';
import type { SceneOptions } from './options.ts';
import { siteCentre } from './site-ground.ts';

/** Shares of open wind are tabled this far apart, to this far. */
const SHARE_STEP = 0.05;
const MOST_SHARE = 1.5;
/** Days of the growing season that the file must know. */
const LEAST_DAYS_SHARE = 0.9;
/** With a quarter of a leap day. */
const HOURS_A_YEAR = 8766;

/** Water that grass gives off over the growing season, by how much of the open wind is left. */
export interface EvaporationCurve {
  /** mm of the growing season, by share of open wind. */
  readonly seasonMm: EvenTable;
  /** Days of the growing season, and those on which less wind means more evaporation. */
  readonly days: number;
  readonly wrongWayDays: number;
  /** Mean open wind of the season at 2 m, m/s. */
  readonly openMps: number;
}

/** The curve, or one sentence that says what it lacks. */
export type SiteEvaporation =
  | { readonly curve: EvaporationCurve; readonly missing: null }
  | { readonly curve: null; readonly missing: string };

const lacking = (missing: string): SiteEvaporation => ({ curve: null, missing });

/**
 * Reference evaporation over the growing season after FAO-56, day by day from the weather file; its winds are scaled to
 * the mean of the wind climate that the map was computed with. The same sun everywhere: only the wind is reduced.
 */
export function siteEvaporation(
  document: SiteDocument,
  { frame, ground, weather, year }: Pick<SceneOptions, 'frame' | 'ground' | 'weather' | 'year'>,
  climate: WindClimate,
): SiteEvaporation {
  if (!weather)
    return lacking(
      'Evaporation needs a weather file with hourly temperature, humidity, radiation and wind (EPW or TMY3); the site has none.',
    );
  const [, latDeg] = siteCentre(document);
  const growing = growingDays(document.site, latDeg, document.site.baseYear + year);
  // A leap day is left out on both sides.
  const season = [...growing].filter((_, day) => growing.length === 365 || day !== 59);
  const wanted = season.reduce((sum, day) => sum + day, 0);
  const years = Math.max(1, Math.round(weather.hourCount / HOURS_A_YEAR));
  const days = evaporationDays(weather).filter(({ dayOfYear }) => season[dayOfYear - 1] === 1);
  if (days.length < LEAST_DAYS_SHARE * wanted * years)
    return lacking(
      `Evaporation needs temperature, humidity, radiation and wind on nine days of ten in the growing season; the weather file has them on ${days.length} of ${wanted * years}.`,
    );
  const [xM, yM] = toLocal(frame, siteCentre(document));
  const elevationM = sampleGrid(ground, xM, yM);
  const place = { latRad: (latDeg * Math.PI) / 180, elevationM: Number.isNaN(elevationM) ? 0 : elevationM };
  const meanOfFile = days.reduce((sum, { windMps }) => sum + windMps, 0) / days.length;
  const openMps = speedAt2mOverGrass(seasonMeanMps(climate.growing), climate.heightM);
  const toOpen = meanOfFile > 0 ? openMps / meanOfFile : 0;
  const terms = days.map((day) => ({ ...windTerms(day, place), openMps: day.windMps * toOpen }));
  // Days that the file lacks are as the mean of the others; of several years the mean.
  const scale = wanted / days.length;
  return {
    curve: {
      seasonMm: evenTable(
        SHARE_STEP,
        MOST_SHARE,
        (share) => scale * terms.reduce((sum, day) => sum + evaporationMm(day, share * day.openMps), 0),
      ),
      days: wanted,
      wrongWayDays: Math.round(scale * terms.filter((day) => !windDries(day)).length),
      openMps,
    },
    missing: null,
  };
}
