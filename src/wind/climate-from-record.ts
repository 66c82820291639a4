import { BadInputError } from '../units/bad-input.ts';
import type { ClimateSector, WindClimate } from './shelter-types.ts';
import { DEFAULT_WEIBULL_K } from './weibull.ts';

/** Where the site does not say: the standard of the World Meteorological Organization, metres. */
export const DEFAULT_HEIGHT_M = 10;

/** One sector of the site file, of one season or, without a season, of the whole year. */
export interface SectorOfSite {
  readonly fromDeg: number;
  readonly frequency: number;
  readonly meanSpeedMps: number;
  readonly weibullK?: number;
  readonly season?: 'growing' | 'rest';
}

/** The site file's `wind`. */
export interface WindOfSite {
  readonly heightM?: number;
  readonly calmShare?: number;
  readonly calmShareBySeason?: { readonly growing?: number; readonly rest?: number };
  readonly measuredRoughnessM?: number;
  readonly siteRoughnessM?: number;
  readonly origin?: 'words' | 'drawn' | 'table';
  /** Absent: those of the weather file. */
  readonly sectors?: readonly SectorOfSite[];
}

/** A wind climate with what had to be taken for granted, one clause each, fit for a summary. */
export interface Assuming {
  readonly climate: WindClimate;
  readonly assumed: readonly string[];
}

/**
 * Sectors of the site file as a climate where they were measured; the frequencies of a season are scaled so that with
 * its calms they add to 1.
 */
export function climateFromRecord(
  wind: WindOfSite & { readonly sectors: readonly SectorOfSite[] },
): Assuming {
  const heightM = wind.heightM ?? DEFAULT_HEIGHT_M;
  const calm = (season: 'growing' | 'rest') => wind.calmShareBySeason?.[season] ?? wind.calmShare ?? 0;
  const assumed: string[] = [];
  if (wind.heightM === undefined) assumed.push(`wind: measured at ${DEFAULT_HEIGHT_M} m`);
  if (wind.sectors.some(({ weibullK }) => weibullK === undefined)) {
    assumed.push(`wind: speeds spread as Weibull k = ${DEFAULT_WEIBULL_K} where a sector gives none`);
  }
  for (const season of ['growing', 'rest'] as const) {
    const sum = wind.sectors
      .filter((sector) => sector.season === undefined || sector.season === season)
      .reduce((total, { frequency }) => total + frequency, 0);
    // Shares of all hours, or of those that are not calm.
    const whole = [1, 1 - calm(season)].some((each) => Math.abs(sum - each) <= SUM_TOLERANCE);
    if (sum > 0 && !whole)
      assumed.push(
        `wind: the frequencies of the ${season === 'growing' ? 'growing season' : 'rest of the year'} add up to ${Math.round(sum * 100)} %, and are taken in proportion`,
      );
  }
  const seasonSectors = (season: 'growing' | 'rest', calmShare: number) =>
    mergedSectors(
      wind.sectors.filter((sector) => sector.season === undefined || sector.season === season),
      calmShare,
    );
  let growing = seasonSectors('growing', calm('growing'));
  let rest = seasonSectors('rest', calm('rest'));
  if (!growing && !rest) {
    throw new BadInputError(
      'The site has a wind without any sector that blows: a frequency and a meanSpeedMps above 0 are expected.',
    );
  }
  if (!growing) {
    assumed.push('wind: the growing season has the sectors of the rest of the year');
    growing = seasonSectors('rest', calm('growing')) as ClimateSector[];
  }
  if (!rest) {
    assumed.push('wind: the rest of the year has the sectors of the growing season');
    rest = seasonSectors('growing', calm('rest')) as ClimateSector[];
  }
  return {
    climate: {
      heightM,
      growing: { calmShare: calm('growing'), sectors: growing },
      rest: { calmShare: calm('rest'), sectors: rest },
    },
    assumed,
  };
}

/** Frequencies that were rounded add up to a little more or less. */
const SUM_TOLERANCE = 0.03;

/** Sectors from the same direction joined, frequencies scaled; null where nothing blows. */
function mergedSectors(given: readonly SectorOfSite[], calmShare: number): ClimateSector[] | null {
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
