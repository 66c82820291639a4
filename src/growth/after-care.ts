import type { CareTime } from './care.ts';
import type { Pace } from './height-curve.ts';
import type { KnownHeight } from './known-height.ts';
import { type Cut, regrownHeight } from './regrowth.ts';
import type { StandingPlant } from './standing-plant.ts';

/** Height of a stump after coppicing, m. Common practice, no source. */
const STUMP_M = 0.1;
/** A thinned crown has its foliage back after so many seasons. Common practice (three to five years), no source. */
const SEASONS_TO_THICKEN = 5;
/** Whatever is cleared of branches, the top fifth keeps its leaves: our bound. */
export const MOST_CLEARED_SHARE = 0.8;

/** The height that a cut leaves, m; null: it takes nothing off the top. */
const cutHeightM = ({ what, heightM }: CareTime): number | null => {
  if (what === 'coppice') return STUMP_M;
  return what === 'pollard' || what === 'cutTo' ? (heightM ?? null) : null;
};

/** What all cuts up to a year come to. */
export interface AfterCare {
  readonly heightM: number;
  /** Head or stump that the crown grew again from, 0: the first crown stands. */
  readonly headM: number;
  /** The same as it was when the height was measured. */
  readonly headWhenKnownM: number;
  readonly fromStump: boolean;
  readonly raisedToM: number;
  readonly foliageShare: number;
}

/**
 * Goes through the cuts from the first to the last.
 * @returns null where one of them was the end of it: what does not shoot again dies of losing its whole crown.
 */
export function afterCare(
  { plant, times }: StandingPlant,
  known: KnownHeight,
  calendarYear: number,
  pace: Pace,
): AfterCare | null {
  let cut: Cut | null = null;
  let headM = 0;
  let headWhenKnownM = 0;
  let fromStump = false;
  let raisedToM = 0;
  let thinned: CareTime[] = [];
  for (const time of times) {
    const { what, year } = time;
    // What was done before the height was measured is in it already.
    const isInHeight = year < known.cutsFromYear;
    const beforeM = isInHeight ? known.heightM : regrownHeight(plant, known, cut, year - 1, pace);
    const toM = cutHeightM(time);
    if (toM !== null) {
      // A plant that is lower than the cut loses nothing by it.
      if (beforeM <= toM) continue;
      const takesAll = what !== 'cutTo';
      if (!isInHeight && takesAll && plant.shootsAgain === false) return null;
      if (!isInHeight) cut = { year, heightM: toM };
      if (takesAll || toM < headM) headM = toM;
      if (isInHeight) headWhenKnownM = headM;
      if (takesAll) {
        fromStump = what === 'coppice';
        raisedToM = 0;
        thinned = [];
      }
    }
    // A foot that was measured with the height says what is left of earlier raising.
    if (what === 'raiseCrown' && !(isInHeight && plant.crownBaseM !== undefined))
      raisedToM = Math.max(raisedToM, Math.min(time.heightM ?? 0, beforeM * MOST_CLEARED_SHARE));
    if (what === 'thin') thinned.push(time);
  }
  return {
    heightM: regrownHeight(plant, known, cut, calendarYear, pace),
    headM,
    headWhenKnownM,
    fromStump,
    raisedToM,
    foliageShare: thinned.reduce((left, { share = 0, year }) => {
      const stillMissing = Math.max(0, 1 - (calendarYear - year) / SEASONS_TO_THICKEN);
      return left * (1 - share * stillMissing);
    }, 1),
  };
}
