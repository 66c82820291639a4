import { ageAtHeight, curveOnSite, FULL_GROWN_SHARE, heightAtAge, type Pace } from './height-curve.ts';
import { type KnownHeight, PLANTING_HEIGHT_M } from './known-height.ts';
import { seasonsGrown } from './season-speeds.ts';
import { sizeFactor, type WoodyPlant } from './woody-plant.ts';

/** Height without any cut, at one pace: the curve, shifted to meet the height that is known. */
function uncutHeight(plant: WoodyPlant, known: KnownHeight, calendarYear: number, pace: Pace): number {
  if (!plant.curve) return known.heightM;
  const usual = curveOnSite(plant.curve, sizeFactor(plant), 'usual');
  const curve = curveOnSite(plant.curve, sizeFactor(plant), pace);
  const fullGrownM = FULL_GROWN_SHARE * Math.min(usual.maxHeightM, curve.maxHeightM);
  if (known.heightM >= fullGrownM) return known.heightM;
  const seasons = seasonsGrown(plant.speeds, known.year + (known.atPlanting ? 0 : 1), calendarYear);
  if (seasons === 0) return known.heightM;
  // Before its measured year a tree may have been younger than the curve's first year: it was at least a young plant.
  const leastM = Math.min(known.heightM, PLANTING_HEIGHT_M);
  return Math.max(leastM, heightAtAge(curve, ageAtHeight(curve, known.heightM) + seasons));
}

/** Where a plant was last cut, and the year whose season came after. */
export interface Cut {
  readonly year: number;
  readonly heightM: number;
}

/**
 * Height after the last cut. Shoots of an old root have no slow first years: Chapman-Richards with p = 1 from the cut,
 * at the species' own rate, never above the plant that was not cut. Our guess, in line with common practice (a metre
 * or two in the first year for what grows fast).
 */
export function regrownHeight(
  plant: WoodyPlant,
  known: KnownHeight,
  cut: Cut | null,
  calendarYear: number,
  pace: Pace,
): number {
  const uncutM = uncutHeight(plant, known, calendarYear, pace);
  if (!cut) return uncutM;
  if (!plant.curve) return Math.min(uncutM, cut.heightM);
  const { maxHeightM, ratePerYear } = curveOnSite(plant.curve, sizeFactor(plant), pace);
  const roomM = Math.max(maxHeightM, known.heightM) - cut.heightM;
  const seasons = seasonsGrown(plant.speeds, cut.year, calendarYear);
  return Math.min(uncutM, cut.heightM + roomM * (1 - Math.exp(-ratePerYear * seasons)));
}
