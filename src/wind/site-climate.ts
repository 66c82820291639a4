import type { WeatherTable } from '../sun/weather/weather-table.ts';
import { type WindCoverage, windCoverage } from '../sun/weather/wind-coverage.ts';
import { COMPASS_POINTS } from '../units/compass.ts';
import { MONTHS } from '../units/months.ts';
import { climateFromHours } from './climate-from-hours.ts';
import {
  type Assuming,
  climateFromRecord,
  DEFAULT_HEIGHT_M,
  type WindOfSite,
} from './climate-from-record.ts';
import { moveClimate, SITE_WIND_HEIGHT_M, type WindPlace } from './move-climate.ts';
import { OPEN_ROUGHNESS_M, speedElsewhere } from './profile.ts';
import { DEFAULT_WEIBULL_K } from './weibull.ts';

/** Taken where nothing is known of the wind: fairly windy open country (common practice, no source). */
const DEFAULT_MEAN_MPS = 4;

/** What a wind climate rests on. */
export interface WindRests {
  /** `site`: sectors of the site file that do not say how they came there. */
  readonly on: 'file' | 'words' | 'drawn' | 'table' | 'site' | 'nothing';
  /** Where it was measured; null: it is the wind of the site itself, and was not moved. */
  readonly measured: WindPlace | null;
  readonly site: WindPlace | null;
  /** Speed at the site's 10 m divided by that where it was measured. */
  readonly factor: number;
  /** Hours of the weather file; null for all else. */
  readonly hours: WindCoverage | null;
}

export interface SiteClimate extends Assuming {
  readonly rests: WindRests;
}

const asItBlows = (given: Assuming, on: WindRests['on']): SiteClimate => ({
  ...given,
  rests: { on, measured: null, site: null, factor: 1, hours: null },
});

/**
 * The open wind of a site at 10 m over its own land: its own sectors where it has them, else its weather file, else
 * the same wind from every side, which is then listed under `assumed`. What was measured elsewhere is moved from its
 * height and roughness to the site's; what was said in words or drawn is the site's wind as it stands.
 */
export function siteClimate(
  wind: WindOfSite | null | undefined,
  weather: WeatherTable | null,
  growingDay: Uint8Array,
): SiteClimate {
  const sectors = wind?.sectors;
  if (wind && sectors) {
    const given = climateFromRecord({ ...wind, sectors });
    if (wind.origin === 'words' || wind.origin === 'drawn') return asItBlows(given, wind.origin);
    return moved(given, wind, wind.origin ?? 'site', null);
  }
  if (!weather) return asItBlows(evenRose(), 'nothing');
  const climate = climateFromHours(weather, growingDay);
  const heightM = wind?.heightM ?? climate.heightM;
  const hours = windCoverage(weather);
  return moved({ climate: { ...climate, heightM }, assumed: gapsOf(hours) }, wind ?? {}, 'file', hours);
}

function gapsOf({ hours, withoutSpeed, withoutDirection, emptyMonths }: WindCoverage): string[] {
  return [
    ...(withoutSpeed > 0 ? [`wind: ${withoutSpeed} of ${hours} hours have no speed and are left out`] : []),
    ...(withoutDirection > 0
      ? [`wind: ${withoutDirection} windy hours without a direction are shared out over all directions`]
      : []),
    ...(emptyMonths.length > 0
      ? [
          `wind: no hours in ${emptyMonths.map((month) => MONTHS[month - 1]).join(', ')}; what the file has stands for its season`,
        ]
      : []),
  ];
}

function moved(
  { climate, assumed }: Assuming,
  wind: WindOfSite,
  on: WindRests['on'],
  hours: WindCoverage | null,
): SiteClimate {
  const roughnessM = wind.measuredRoughnessM ?? OPEN_ROUGHNESS_M;
  const measured = { heightM: climate.heightM, roughnessM };
  const site = { heightM: SITE_WIND_HEIGHT_M, roughnessM: wind.siteRoughnessM ?? roughnessM };
  const granted = [
    ...(wind.measuredRoughnessM === undefined
      ? [`wind: measured over open land of roughness ${OPEN_ROUGHNESS_M} m`]
      : []),
    ...(wind.siteRoughnessM === undefined ? ['wind: the site’s land as rough as where it was measured'] : []),
  ];
  return {
    climate: moveClimate(climate, measured, site),
    assumed: [...assumed, ...granted],
    rests: { on, measured, site, factor: speedElsewhere(1, measured, site), hours },
  };
}

function evenRose(): Assuming {
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
