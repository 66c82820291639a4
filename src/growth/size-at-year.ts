import { type AfterCare, afterCare, MOST_CLEARED_SHARE } from './after-care.ts';
import { crownDiameterM } from './crown-spread.ts';
import type { Pace } from './height-curve.ts';
import { type KnownHeight, knownHeight } from './known-height.ts';
import { standingPlant } from './standing-plant.ts';
import { sizeFactor, type WoodyPlant } from './woody-plant.ts';

export interface WoodySize {
  readonly heightM: number;
  readonly crownRadiusM: number;
  readonly crownBaseM: number;
  /** Height below which the crown was taken off, or from which it grew again; 0: none was. */
  readonly clearedToM: number;
  /** It grew again from its stump: what was known of its foot is over. */
  readonly fromStump: boolean;
  /** Foliage left after thinning, 1 where there was none or it has grown back. */
  readonly foliageShare: number;
}

/** Clear stem of a tree whose species is not known. Common practice, no source. */
const UNKNOWN_CLEAR_STEM_SHARE = 0.15;
/** A young tree wears leaves on at least its upper half, whatever clear stem it is to have. Common practice, no source. */
const MOST_CLEAR_STEM_SHARE = 0.5;
function crownBase(plant: WoodyPlant, care: AfterCare, knownM: number): number {
  const { heightM, headM, fromStump, raisedToM } = care;
  const clearedToM = Math.min(Math.max(fromStump ? 0 : headM, raisedToM), heightM * MOST_CLEARED_SHARE);
  if (headM > 0 && !fromStump) return clearedToM;
  const clearStemShare = plant.clearStemShare ?? UNKNOWN_CLEAR_STEM_SHARE;
  if (plant.crownBaseM === undefined || fromStump) return Math.max(clearedToM, heightM * clearStemShare);
  const measuredShare = plant.crownBaseM < knownM ? plant.crownBaseM / knownM : 0;
  const measuredM = Math.min(plant.crownBaseM, heightM * Math.max(MOST_CLEAR_STEM_SHARE, measuredShare));
  return Math.max(clearedToM, measuredM);
}

/** Length that is crown above a head (m): all of it without one, and never less than its leafy top. */
const crownLength = (heightM: number, headM: number): number =>
  Math.max(heightM - headM, heightM * (1 - MOST_CLEARED_SHARE));

/**
 * Crown radius (m): by the species' allometry of the height, or of the length above its head where the crown grew
 * again; pinned by a given radius.
 */
function crownRadius(plant: WoodyPlant, care: AfterCare, known: KnownHeight): number {
  const factor = sizeFactor(plant);
  const rule = plant.spread ?? null;
  const radiusOf = (lengthM: number) => crownDiameterM(rule, lengthM, factor) / 2;
  const radiusM = radiusOf(crownLength(care.heightM, care.headM));
  if (plant.crownRadiusM === undefined) return radiusM;
  const fullGrownM = plant.curve ? plant.curve.maxHeightM * factor : known.heightM;
  const pinM = plant.heightM === undefined ? fullGrownM : crownLength(plant.heightM, care.headWhenKnownM);
  return (radiusM * plant.crownRadiusM) / radiusOf(pinM);
}

/**
 * Size at the end of the growing season that starts in `calendarYear`; null while it is not planted yet and from the
 * year of its removal or death on.
 *
 * A measured height is the height at the end of its year's season. A height at planting is the height before it, so
 * that the first season in the ground already adds to it. The age on the curve is shifted to meet the height, and the
 * curve is followed both ways. At 0.95 of the species' final height or more it stays.
 *
 * A given radius belongs to the given height and scales by the species' allometry. Beside no height it can only mean
 * the full-grown crown. A given crown base stays, except while the tree is too young to have it.
 */
export function woodySizeAt(
  plant: WoodyPlant,
  calendarYear: number,
  baseYear: number,
  pace: Pace,
): WoodySize | null {
  const standing = standingPlant(plant, calendarYear, baseYear);
  if (!standing) return null;
  const known = knownHeight(standing.plant, baseYear);
  const care = afterCare(standing, known, calendarYear, pace);
  if (!care) return null;
  return {
    heightM: care.heightM,
    crownRadiusM: crownRadius(standing.plant, care, known),
    crownBaseM: crownBase(standing.plant, care, known.heightM),
    clearedToM: Math.max(care.fromStump ? 0 : care.headM, care.raisedToM),
    fromStump: care.fromStump,
    foliageShare: care.foliageShare,
  };
}
