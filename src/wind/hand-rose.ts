import { COMPASS_POINTS, SECTOR_WIDTH_DEG } from '../units/compass.ts';
import type { WindOfSite } from './climate-from-record.ts';
import type { ClimateSector, WindClimate } from './shelter-types.ts';
import { DEFAULT_WEIBULL_K } from './weibull.ts';

export type RoseSeason = 'growing' | 'rest' | 'year';
type Season = WindClimate['growing'];

/** One direction pulled to another length; what is absent stays. */
export interface Pull {
  /** Index of the sixteen points of the compass. */
  readonly point: number;
  /** Share of the season's hours. */
  readonly share?: number;
  readonly meanSpeedMps?: number;
}

/** No direction takes more of the windy hours than this, so that the others keep their proportions. */
const MOST_OF_WINDY = 0.95;
/** The mean wind of a direction that had none until it was pulled, m/s (common practice, no source). */
const NEW_MEAN_MPS = 3;
const SAME_TO = 1e-4;

/** A season over the sixteen points of the compass: sectors of any width are shared out by overlap. */
export function onSixteen(season: Season): Season {
  const given = season.sectors;
  if (
    given.length === COMPASS_POINTS.length &&
    given.every(({ fromDeg }, i) => fromDeg === i * SECTOR_WIDTH_DEG)
  )
    return season;
  const even = [8, 12, 16, 36].includes(given.length);
  const halfDeg = even ? 180 / given.length : 0;
  const parts = COMPASS_POINTS.map(() => ({ frequency: 0, run: 0, shape: 0 }));
  for (const { fromDeg, frequency, meanSpeedMps, weibullK } of given)
    for (const [point, share] of overlaps(fromDeg, halfDeg)) {
      parts[point].frequency += frequency * share;
      parts[point].run += frequency * share * meanSpeedMps;
      parts[point].shape += frequency * share * weibullK;
    }
  return {
    calmShare: season.calmShare,
    sectors: parts.map(
      ({ frequency, run, shape }, i): ClimateSector => ({
        fromDeg: COMPASS_POINTS[i].azimuthDeg,
        frequency,
        meanSpeedMps: frequency > 0 ? run / frequency : 0,
        weibullK: frequency > 0 ? shape / frequency : DEFAULT_WEIBULL_K,
      }),
    ),
  };
}

/** Points that an arc of `halfDeg` to both sides reaches into, with their shares of it. */
function overlaps(fromDeg: number, halfDeg: number): (readonly [number, number])[] {
  const points = COMPASS_POINTS.length;
  const at = fromDeg / SECTOR_WIDTH_DEG;
  const half = halfDeg / SECTOR_WIDTH_DEG;
  if (half === 0) return [[Math.round(at) % points, 1]];
  const found: (readonly [number, number])[] = [];
  for (let point = Math.floor(at - half); point <= Math.ceil(at + half); point++) {
    const inside = Math.min(at + half, point + 0.5) - Math.max(at - half, point - 0.5);
    if (inside > 1e-9) found.push([(point + points) % points, inside / (2 * half)]);
  }
  return found;
}

/** Both seasons as one, by their shares of the year's days. */
export function yearOf(
  { growing, rest }: Pick<WindClimate, 'growing' | 'rest'>,
  growingShare: number,
): Season {
  return onSixteen({
    calmShare: growing.calmShare * growingShare + rest.calmShare * (1 - growingShare),
    sectors: [
      ...onSixteen(growing).sectors.map((each) => ({ ...each, frequency: each.frequency * growingShare })),
      ...onSixteen(rest).sectors.map((each) => ({ ...each, frequency: each.frequency * (1 - growingShare) })),
    ],
  });
}

/**
 * The climate with one direction pulled, on sixteen points. The other directions of the season give or take in
 * proportion, so that the hours stay all hours. Pulling the whole year changes both seasons by the same ratio.
 */
export function pulled(
  climate: WindClimate,
  season: RoseSeason,
  pull: Pull,
  growingShare: number,
): WindClimate {
  const growing = onSixteen(climate.growing);
  const rest = onSixteen(climate.rest);
  const year = season === 'year' ? yearOf({ growing, rest }, growingShare).sectors[pull.point] : null;
  const own = (one: Season): Season => {
    const before = one.sectors[pull.point];
    const asYear = (wanted: number | undefined, now: number, ofYear: number | undefined) =>
      wanted === undefined || !ofYear ? wanted : (wanted * now) / ofYear;
    return pulledSeason(one, {
      point: pull.point,
      share: asYear(pull.share, before.frequency, year?.frequency),
      meanSpeedMps: asYear(pull.meanSpeedMps, before.meanSpeedMps, year?.meanSpeedMps),
    });
  };
  return {
    heightM: climate.heightM,
    growing: season === 'rest' ? growing : own(growing),
    rest: season === 'growing' ? rest : own(rest),
  };
}

function pulledSeason({ calmShare, sectors }: Season, { point, share, meanSpeedMps }: Pull): Season {
  const windy = 1 - calmShare;
  const before = sectors[point];
  const frequency =
    share === undefined ? before.frequency : Math.min(Math.max(0, share), windy * MOST_OF_WINDY);
  const others = windy - before.frequency;
  const left = windy - frequency;
  return {
    calmShare,
    sectors: sectors.map((sector, i) => {
      if (i === point) {
        const mean = meanSpeedMps ?? sector.meanSpeedMps;
        return { ...sector, frequency, meanSpeedMps: mean > 0 || share === undefined ? mean : NEW_MEAN_MPS };
      }
      return {
        ...sector,
        frequency: others > SAME_TO ? (sector.frequency / others) * left : left / (sectors.length - 1),
        meanSpeedMps: sector.meanSpeedMps || NEW_MEAN_MPS,
      };
    }),
  };
}

/** The climate with other calms in a season; its directions share what is left as before. */
export function withCalms(climate: WindClimate, season: RoseSeason, calmShare: number): WindClimate {
  const own = (one: Season): Season => ({
    calmShare,
    sectors: one.sectors.map((sector) => ({
      ...sector,
      frequency: (sector.frequency / (1 - one.calmShare || 1)) * (1 - calmShare),
    })),
  });
  return {
    ...climate,
    growing: season === 'rest' ? climate.growing : own(climate.growing),
    rest: season === 'growing' ? climate.rest : own(climate.rest),
  };
}

const rounded = (value: number, digits: number): number => Number(value.toFixed(digits));

/** A climate drawn by hand as the site file holds it: sixteen sectors where the seasons are alike, else as many for each. */
export function drawnRecord({ heightM, growing, rest }: WindClimate): WindOfSite {
  const sectorsOf = (season: Season) =>
    season.sectors.map(({ fromDeg, frequency, meanSpeedMps, weibullK }) => ({
      fromDeg,
      frequency: rounded(frequency, 5),
      meanSpeedMps: rounded(meanSpeedMps, 2),
      weibullK: rounded(weibullK, 2),
    }));
  const head = { heightM, origin: 'drawn' } as const;
  const alike =
    Math.abs(growing.calmShare - rest.calmShare) < SAME_TO &&
    growing.sectors.every((sector, i) => {
      const other = rest.sectors[i];
      return (
        Math.abs(sector.frequency - other.frequency) < SAME_TO &&
        Math.abs(sector.meanSpeedMps - other.meanSpeedMps) < 0.01 &&
        Math.abs(sector.weibullK - other.weibullK) < 0.01
      );
    });
  if (alike) return { ...head, calmShare: rounded(growing.calmShare, 4), sectors: sectorsOf(growing) };
  return {
    ...head,
    calmShareBySeason: { growing: rounded(growing.calmShare, 4), rest: rounded(rest.calmShare, 4) },
    sectors: [
      ...sectorsOf(growing).map((sector) => ({ ...sector, season: 'growing' as const })),
      ...sectorsOf(rest).map((sector) => ({ ...sector, season: 'rest' as const })),
    ],
  };
}
