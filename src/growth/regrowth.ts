import {
  ageAtHeight,
  curveOnSite,
  FULL_GROWN_SHARE,
  type HeightCurve,
  heightAtAge,
  type Pace,
} from './height-curve.ts';
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
 * Height after so many usual seasons of growth from a cut. Shoots of an old root have no slow first years: they grow
 * as fast as the species ever does, up to the height at which it does so on its own curve, and follow that curve from
 * there. The rule is ours; it gives what the trade expects, a metre or two in the first year for what grows fast. As
 * growth hangs on nothing but the height that is reached, a lower cut never overtakes a higher one.
 */
function shootHeight(curve: HeightCurve, fromM: number, seasons: number): number {
  const { maxHeightM, ratePerYear, shape } = curve;
  // Where the curve is steepest: 1 - exp(-k t) = 1 - 1/p, from its second derivative; at p of 1 or less from the start.
  const steepest = Math.max(0, 1 - 1 / shape);
  const steepestM = maxHeightM * steepest ** shape;
  if (fromM >= steepestM) return heightAtAge(curve, ageAtHeight(curve, fromM) + seasons);
  const mostAYearM = maxHeightM * ratePerYear * steepest ** (shape - 1);
  const seasonsToCurve = (steepestM - fromM) / mostAYearM;
  return seasons <= seasonsToCurve
    ? fromM + mostAYearM * seasons
    : heightAtAge(curve, ageAtHeight(curve, steepestM) + seasons - seasonsToCurve);
}

/** Height after the last cut, never above the plant that was not cut. */
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
  const curve = curveOnSite(plant.curve, sizeFactor(plant), pace);
  // One that is known to be taller than its species gets goes back to where it was.
  const own = { ...curve, maxHeightM: Math.max(curve.maxHeightM, known.heightM) };
  const seasons = seasonsGrown(plant.speeds, cut.year, calendarYear);
  return Math.min(uncutM, shootHeight(own, cut.heightM, seasons));
}
