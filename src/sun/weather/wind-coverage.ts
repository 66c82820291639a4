import type { WeatherTable } from './weather-table.ts';

/** How much of a file's time has a wind. */
export interface WindCoverage {
  readonly hours: number;
  /** Hours without a speed: they are left out. */
  readonly withoutSpeed: number;
  /** Hours of wind without a direction: they are shared out over the others. */
  readonly withoutDirection: number;
  /** Hours of Beaufort 6 and more, as they were measured. */
  readonly strong: number;
  /** Months (1 to 12) that have no hour with a speed. */
  readonly emptyMonths: readonly number[];
}

/** Lower limit of Beaufort 6, m/s (World Meteorological Organization). */
export const STRONG_MPS = 10.8;

export function windCoverage({ hourCount, month, windSpeedMps, windFromDeg }: WeatherTable): WindCoverage {
  const seen = new Uint8Array(13);
  let withoutSpeed = 0;
  let withoutDirection = 0;
  let strong = 0;
  for (let i = 0; i < hourCount; i++) {
    if (Number.isNaN(windSpeedMps[i])) withoutSpeed++;
    else {
      seen[month[i]] = 1;
      if (windSpeedMps[i] >= STRONG_MPS) strong++;
      if (windSpeedMps[i] > 0 && Number.isNaN(windFromDeg[i])) withoutDirection++;
    }
  }
  const emptyMonths = Array.from({ length: 12 }, (_, i) => i + 1).filter((each) => !seen[each]);
  return { hours: hourCount, withoutSpeed, withoutDirection, strong, emptyMonths };
}
