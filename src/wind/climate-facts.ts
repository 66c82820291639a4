import { BEAUFORT_SCALE } from './beaufort.ts';
import type { ClimateSector, WindClimate } from './shelter-types.ts';
import { exceedanceShare, weibullScale } from './weibull.ts';

/** One direction of one season, as it is read and printed. */
export interface SectorFacts extends ClimateSector {
  /** Scale c of the Weibull distribution, m/s. */
  readonly weibullScaleMps: number;
  /** Share of this direction's hours in each Beaufort force, 0 to 12; they add to 1. */
  readonly forceShares: readonly number[];
}

export interface SeasonFacts {
  /** Hours of the season. */
  readonly hours: number;
  readonly calmShare: number;
  /** Mean of all its hours, calms included, m/s at 10 m. */
  readonly meanSpeedMps: number;
  readonly sectors: readonly SectorFacts[];
  /** Hours in which the wind has at least each Beaufort force, 0 to 12; the first are all hours. */
  readonly hoursFromForce: readonly number[];
}

export interface ClimateFacts {
  readonly heightM: number;
  readonly growing: SeasonFacts;
  readonly rest: SeasonFacts;
}

/**
 * What a person reads of a wind climate: how often each of Beaufort's signs is seen, sector by sector from its Weibull
 * distribution, and in hours of each season.
 * @param growingDay 1 for each day of the growing season, 365 or 366 long.
 */
export function climateFacts(climate: WindClimate, growingDay: Uint8Array): ClimateFacts {
  const growingDays = growingDay.reduce((sum, day) => sum + day, 0);
  return {
    heightM: climate.heightM,
    growing: seasonFacts(climate.growing, growingDays * 24),
    rest: seasonFacts(climate.rest, (growingDay.length - growingDays) * 24),
  };
}

function seasonFacts({ calmShare, sectors }: WindClimate['growing'], hours: number): SeasonFacts {
  const reached = ({ meanSpeedMps, weibullK }: ClimateSector): number[] =>
    BEAUFORT_SCALE.map(({ fromMps }) => exceedanceShare(fromMps, meanSpeedMps, weibullK));
  const facts = sectors.map((sector): SectorFacts => {
    const shares = reached(sector);
    return {
      ...sector,
      weibullScaleMps: weibullScale(sector.meanSpeedMps, sector.weibullK),
      forceShares: shares.map((share, force) => share - (shares[force + 1] ?? 0)),
    };
  });
  const hoursFromForce = BEAUFORT_SCALE.map(({ force }) => {
    const blowing = sectors.reduce((sum, sector) => sum + sector.frequency * reached(sector)[force], 0);
    return hours * (force === 0 ? blowing + calmShare : blowing);
  });
  return {
    hours,
    calmShare,
    meanSpeedMps: sectors.reduce((sum, each) => sum + each.frequency * each.meanSpeedMps, 0),
    sectors: facts,
    hoursFromForce,
  };
}
