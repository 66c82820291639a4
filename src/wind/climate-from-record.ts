import type { WeatherTable } from '../sun/weather/weather-table.ts';
import { BadInputError } from '../units/bad-input.ts';
import { climateFromHours } from './climate-from-hours.ts';
import { COMPASS_POINTS } from './compass.ts';
import type { ClimateSector, WindClimate } from './shelter-types.ts';
import { DEFAULT_WEIBULL_K } from './weibull.ts';

const DEFAULT_HEIGHT_M = 10;
/** Taken where nothing is known of the wind: fairly windy open country (common practice, no source). */
const DEFAULT_MEAN_MPS = 4;

/** The site file's `wind`: sectors of one season or, without a season, of the whole year. */
export interface WindOfSite {
  readonly heightM?: number;
  readonly calmShare?: number;
  readonly sectors: readonly {
    readonly fromDeg: number;
    readonly frequency: number;
    readonly meanSpeedMps: number;
    readonly weibullK?: number;
    readonly season?: 'growing' | 'rest';
  }[];
}

export interface SiteClimate {
  readonly climate: WindClimate;
  /** What had to be taken for granted, one clause each, fit for a summary. */
  readonly assumed: readonly string[];
}

/**
 * The wind climate of a site: its own sectors where it has them, else its weather file, else the same wind from every
 * side, which is then listed under `assumed`.
 */
export function siteClimate(
  wind: WindOfSite | null | undefined,
  weather: WeatherTable | null,
  growingDay: Uint8Array,
): SiteClimate {
  if (wind) return climateFromRecord(wind);
  if (weather) return { climate: climateFromHours(weather, growingDay), assumed: [] };
  const sectors = COMPASS_POINTS.map(({ azimuthDeg }) => ({
    fromDeg: azimuthDeg,
    frequency: 1 / COMPASS_POINTS.length,
    meanSpeedMps: DEFAULT_MEAN_MPS,
    weibullK: DEFAULT_WEIBULL_K,
  }));
  const season = { calmShare: 0, sectors };
  return {
    climate: { heightM: DEFAULT_HEIGHT_M, growing: season, rest: season },
    assumed: [
      `wind: the site has neither winds nor a weather file, so it blows evenly from all sides at a mean of ${DEFAULT_MEAN_MPS} m/s at ${DEFAULT_HEIGHT_M} m`,
    ],
  };
}

/** Sectors of the site file as a climate; the frequencies of a season are scaled so that with its calms they add to 1. */
export function climateFromRecord(wind: WindOfSite): SiteClimate {
  const heightM = wind.heightM ?? DEFAULT_HEIGHT_M;
  const calmShare = wind.calmShare ?? 0;
  const assumed: string[] = [];
  if (wind.heightM === undefined) assumed.push(`wind: measured at ${DEFAULT_HEIGHT_M} m`);
  if (wind.sectors.some(({ weibullK }) => weibullK === undefined)) {
    assumed.push(`wind: speeds spread as Weibull k = ${DEFAULT_WEIBULL_K} where a sector gives none`);
  }
  const seasonSectors = (season: 'growing' | 'rest') =>
    mergedSectors(
      wind.sectors.filter((sector) => sector.season === undefined || sector.season === season),
      calmShare,
    );
  let growing = seasonSectors('growing');
  let rest = seasonSectors('rest');
  if (!growing && !rest) {
    throw new BadInputError(
      'The site has a wind without any sector that blows: a frequency and a meanSpeedMps above 0 are expected.',
    );
  }
  if (!growing) assumed.push('wind: the growing season has the sectors of the rest of the year');
  if (!rest) assumed.push('wind: the rest of the year has the sectors of the growing season');
  growing ??= rest as ClimateSector[];
  rest ??= growing;
  return {
    climate: { heightM, growing: { calmShare, sectors: growing }, rest: { calmShare, sectors: rest } },
    assumed,
  };
}

/** Sectors from the same direction joined, frequencies scaled; null where nothing blows. */
function mergedSectors(given: WindOfSite['sectors'], calmShare: number): ClimateSector[] | null {
  const byDirection = new Map<number, ClimateSector>();
  for (const { fromDeg, frequency, meanSpeedMps, weibullK } of given) {
    const from = fromDeg % 360;
    const known = byDirection.get(from);
    const total = frequency + (known?.frequency ?? 0);
    const mixed = (own: number, other: number) =>
      total > 0 ? (own * frequency + other * (total - frequency)) / total : own;
    const shape = weibullK ?? DEFAULT_WEIBULL_K;
    byDirection.set(from, {
      fromDeg: from,
      frequency: total,
      meanSpeedMps: mixed(meanSpeedMps, known?.meanSpeedMps ?? 0),
      weibullK: mixed(shape, known?.weibullK ?? shape),
    });
  }
  const sectors = [...byDirection.values()];
  const sum = sectors.reduce((total, { frequency }) => total + frequency, 0);
  if (!sectors.some(({ frequency, meanSpeedMps }) => frequency > 0 && meanSpeedMps > 0)) return null;
  return sectors.map((sector) => ({ ...sector, frequency: (sector.frequency / sum) * (1 - calmShare) }));
}
