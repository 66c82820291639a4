import { speedElsewhere } from './profile.ts';
import type { WindClimate } from './shelter-types.ts';

/** Where a wind is measured or wanted. */
export interface WindPlace {
  readonly heightM: number;
  /** Roughness length of the land around, metres. */
  readonly roughnessM: number;
}

/** Height at which the open wind of a site is given: that of Beaufort's scale and of gales, metres. */
export const SITE_WIND_HEIGHT_M = 10;

/**
 * The climate at another height and over other land. Every speed takes the same factor, so directions, calms and
 * Weibull shapes stay. Throws BadInputError where a height lies within the roughness.
 */
export function moveClimate(climate: WindClimate, measured: WindPlace, wanted: WindPlace): WindClimate {
  const factor = speedElsewhere(1, measured, wanted);
  const moved = ({ calmShare, sectors }: WindClimate['growing']): WindClimate['growing'] => ({
    calmShare,
    sectors: sectors.map((sector) => ({ ...sector, meanSpeedMps: sector.meanSpeedMps * factor })),
  });
  return { heightM: wanted.heightM, growing: moved(climate.growing), rest: moved(climate.rest) };
}
