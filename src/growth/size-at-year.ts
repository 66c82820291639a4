import { type AfterCare, afterCare, cutHeightM } from './after-care.ts';
import { careUpTo } from './care.ts';
import { crownDiameterM } from './crown-spread.ts';
import type { Pace } from './height-curve.ts';
import { type KnownHeight, knownHeight } from './known-height.ts';
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
/** Whatever is cleared of branches, the top fifth keeps its leaves: our bound. */
const MOST_CLEARED_SHARE = 0.8;

/** The plant that stands there in a year, as one that was never replaced; null: none does. */
function standingPlant(plant: WoodyPlant, calendarYear: number): WoodyPlant | null {
  if (plant.removedYear !== undefined && calendarYear >= plant.removedYear) return null;
  if (plant.plantedYear !== undefined && calendarYear < plant.plantedYear) return null;
  if (!plant.care) return plant;
  const ends = careUpTo(plant.care, calendarYear).filter(({ what }) => what === 'die' || what === 'replace');
  const end = ends.at(-1);
  if (!end) return plant;
  if (end.what === 'die') return null;
  // A height that was measured later is that of the one which stands there now.
  if (plant.measuredYear !== undefined && plant.measuredYear >= end.year) return plant;
  const { status, spread, curve, clearStemShare, rootstockFactor, vigour, care, speeds } = plant;
  // What was found out of the one that was felled says nothing of the next.
  return {
    status,
    spread,
    curve,
    clearStemShare,
    rootstockFactor,
    vigour,
    speeds,
    care,
    plantedYear: end.year,
  };
}

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

/**
 * Crown radius (m): by the species' allometry of the height, or of the length above its head where the crown grew
 * again; pinned by a given radius.
 */
function crownRadius(plant: WoodyPlant, care: AfterCare, known: KnownHeight, baseYear: number): number {
  const factor = sizeFactor(plant);
  const rule = plant.spread ?? null;
  const radiusOf = (lengthM: number) => crownDiameterM(rule, lengthM, factor) / 2;
  const lengthM = care.heightM - care.headM;
  if (plant.crownRadiusM === undefined) return radiusOf(lengthM);
  const pinM = plant.heightM ?? (plant.curve ? plant.curve.maxHeightM * factor : known.heightM);
  const measuredIn = plant.measuredYear ?? baseYear - 1;
  const headThen = careUpTo(plant.care, measuredIn).findLast(
    ({ what }) => what === 'pollard' || what === 'coppice',
  );
  const headThenM = headThen ? (cutHeightM(headThen) ?? 0) : 0;
  return (radiusOf(lengthM) * plant.crownRadiusM) / radiusOf(headThenM < pinM ? pinM - headThenM : pinM);
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
  const standing = standingPlant(plant, calendarYear);
  if (!standing) return null;
  const known = knownHeight(standing, baseYear);
  const care = afterCare(standing, known, calendarYear, pace);
  return {
    heightM: care.heightM,
    crownRadiusM: crownRadius(standing, care, known, baseYear),
    crownBaseM: crownBase(standing, care, known.heightM),
    clearedToM: Math.max(care.fromStump ? 0 : care.headM, care.raisedToM),
    fromStump: care.fromStump,
    foliageShare: care.foliageShare,
  };
}
