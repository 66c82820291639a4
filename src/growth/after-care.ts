import { type CareTime, careUpTo } from './care.ts';
import type { Pace } from './height-curve.ts';
import type { KnownHeight } from './known-height.ts';
import { type Cut, regrownHeight } from './regrowth.ts';
import type { WoodyPlant } from './woody-plant.ts';

/** Height of a stump after coppicing, m. Common practice, no source. */
const STUMP_M = 0.1;
/** A thinned crown has its foliage back after so many seasons. Common practice (three to five years), no source. */
const SEASONS_TO_THICKEN = 5;

/** The height that a cut leaves, m; null: it takes nothing off the top. */
export const cutHeightM = ({ what, heightM }: CareTime): number | null => {
  if (what === 'coppice') return STUMP_M;
  return what === 'pollard' || what === 'cutTo' ? (heightM ?? null) : null;
};

/** What all cuts up to a year come to. */
export interface AfterCare {
  readonly heightM: number;
  /** Head or stump that the crown grew again from, 0: the first crown stands. */
  readonly headM: number;
  readonly fromStump: boolean;
  readonly raisedToM: number;
  readonly foliageShare: number;
}

export function afterCare(
  plant: WoodyPlant,
  known: KnownHeight,
  calendarYear: number,
  pace: Pace,
): AfterCare {
  let cut: Cut | null = null;
  let headM = 0;
  let fromStump = false;
  let raisedToM = 0;
  let thinned: CareTime[] = [];
  const times = plant.care ? careUpTo(plant.care, calendarYear) : [];
  for (const time of times) {
    if (plant.plantedYear !== undefined && time.year <= plant.plantedYear) continue;
    const toM = cutHeightM(time);
    const isInHeight = time.year < known.cutsFromYear;
    if (toM !== null) {
      // A plant that is lower than the cut loses nothing by it.
      const beforeM = isInHeight ? known.heightM : regrownHeight(plant, known, cut, time.year - 1, pace);
      if (beforeM <= toM) continue;
      if (!isInHeight) cut = { year: time.year, heightM: toM };
    }
    if (time.what === 'pollard' || time.what === 'coppice') {
      fromStump = time.what === 'coppice';
      headM = toM ?? 0;
      raisedToM = 0;
      thinned = [];
    }
    // A foot that was measured with the height says what is left of earlier raising.
    if (time.what === 'raiseCrown' && !(isInHeight && plant.crownBaseM !== undefined))
      raisedToM = Math.max(raisedToM, time.heightM ?? 0);
    if (time.what === 'thin') thinned.push(time);
  }
  return {
    heightM: regrownHeight(plant, known, cut, calendarYear, pace),
    headM,
    fromStump,
    raisedToM,
    foliageShare: thinned.reduce((left, { share = 0, year }) => {
      const stillMissing = Math.max(0, 1 - (calendarYear - year) / SEASONS_TO_THICKEN);
      return left * (1 - share * stillMissing);
    }, 1),
  };
}
