import type { GridSpec } from '../numeric/grid.ts';
import type { AppState } from './model.ts';
import { windBand } from './wind-band.ts';

/** One year of the followed field, in the period that is shown; null: of that the years say nothing. */
export interface FollowedYear {
  readonly fieldName: string;
  readonly grid: GridSpec;
  /** Share of open light; the growing season's. */
  readonly lightShare: Float32Array | null;
  /** Hours of direct sun a day; the whole year's mean. */
  readonly sunHours: Float32Array | null;
  /** Share by which the wind is cut; the growing season's, also for each of its months. */
  readonly windCut: Float32Array | null;
}

type Needs = Pick<AppState, 'yearsLook' | 'year' | 'period' | 'document' | 'centre'>;

const DAYS_IN_YEAR = 365.25;
/** Whether the years say anything of the picture and period that are shown. */
export function followsYears(
  state: Pick<Needs, 'period' | 'document' | 'centre'> & Pick<AppState, 'picture'>,
) {
  const { picture, period } = state;
  if (picture === 'wind-cut') return windBand(state) === 0;
  return (picture === 'light-share' && period === 'season') || (picture === 'sun-hours' && period === 'year');
}

let last: { readonly of: readonly unknown[]; readonly followed: FollowedYear } | null = null;

/**
 * What the years in one look hold of the chosen year, along the rays that follow a hand: shown until the exact map of
 * that year is there. Null where they do not hold it or the site has changed. The same object as long as nothing of it
 * changed.
 */
export function followedYear(state: Needs): FollowedYear | null {
  const { year, period } = state;
  const { result, stale } = state.yearsLook;
  const maps = stale ? undefined : result?.maps.get(year);
  if (!result || !maps) return null;
  const inSeason = windBand(state) === 0;
  const of = [maps, result.grid, result.fieldName, period, inSeason];
  if (!last || of.some((part, i) => !Object.is(part, last?.of[i])))
    last = {
      of,
      followed: {
        fieldName: result.fieldName,
        grid: result.grid,
        lightShare: period === 'season' ? maps.lightShare : null,
        sunHours: period === 'year' ? maps.directHours.map((hours) => hours / DAYS_IN_YEAR) : null,
        windCut: inSeason ? maps.windShare.map((share) => 1 - share) : null,
      },
    };
  return last.followed;
}
