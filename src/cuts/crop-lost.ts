/**
 * What a cut costs in crop: years of a full crop that the tree does not bear. A tree bears from the year the catalogue
 * gives after planting; what was pollarded or coppiced, and what is planted in the place of a felled tree, bears again
 * after as many. A crown of which a part is gone bears that part less. All of it common practice, no source.
 */
import { YEARS_TO_KEEP } from './cut-types.ts';

export interface CropQuestion {
  /** First season after the cut, and the year of planting where it is known; both calendar years. */
  readonly year: number;
  readonly plantedYear: number | undefined;
  /** Years from planting to a worthwhile crop; null: it is not there for a crop. */
  readonly yearsToBear: number | null;
  /** Nothing is borne until new shoots, or a new tree, have come to bear. */
  readonly beginsAnew: boolean;
  /** Share of the crown that the cut leaves in a season, years after the first. */
  readonly crownShare: (later: number) => number;
}

export function cropYearsLost(question: CropQuestion): number {
  const { year, plantedYear, yearsToBear, beginsAnew, crownShare } = question;
  if (yearsToBear === null) return 0;
  const bearsFrom = plantedYear === undefined ? year : plantedYear + yearsToBear;
  const seasons = Math.max(YEARS_TO_KEEP + 1, beginsAnew ? yearsToBear : 0);
  let lost = 0;
  for (let later = 0; later < seasons; later++) {
    if (year + later < bearsFrom) continue;
    const bears = beginsAnew && later < yearsToBear ? 0 : crownShare(later);
    lost += Math.max(0, 1 - bears);
  }
  return lost;
}
