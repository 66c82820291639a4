import { crownDiameterM, type SpreadRule } from './crown-spread.ts';
import {
  ageAtHeight,
  curveOnSite,
  FULL_GROWN_SHARE,
  type HeightCurve,
  heightAtAge,
  type Pace,
} from './height-curve.ts';

/** What is known of one tree, belt or block, and of its species. Years are calendar years. */
export interface WoodyPlant {
  /** The species' curve; null or absent: nothing grows. */
  readonly curve?: HeightCurve | null;
  readonly spread?: SpreadRule | null;
  /** Share of the height that is clear stem, where no crown base is given. */
  readonly clearStemShare?: number;
  readonly status?: 'existing' | 'planned';
  readonly heightM?: number;
  readonly measuredYear?: number;
  readonly plantedYear?: number;
  readonly removedYear?: number;
  readonly crownRadiusM?: number;
  readonly crownBaseM?: number;
  /** Height of a standing plant where none is given, m; default 6. */
  readonly standingHeightM?: number;
  /** Final size against a tree on its own roots; default 1. */
  readonly rootstockFactor?: number;
  /** Site vigour; default 1. */
  readonly vigour?: number;
}

export interface WoodySize {
  readonly heightM: number;
  readonly crownRadiusM: number;
  readonly crownBaseM: number;
}

/** Height of a plant at planting where none is given, m (site file, "Years"). */
const PLANTING_HEIGHT_M = 0.6;
/** Height of something that stands there already and of which nothing else is known, m. Common practice, no source. */
const UNKNOWN_HEIGHT_M = 6;
/** Clear stem of a tree whose species is not known. Common practice, no source. */
const UNKNOWN_CLEAR_STEM_SHARE = 0.15;
/** A young tree wears leaves on at least its upper half, whatever clear stem it is to have. Common practice, no source. */
const MOST_CLEAR_STEM_SHARE = 0.5;

const sizeFactor = (plant: WoodyPlant): number => (plant.rootstockFactor ?? 1) * (plant.vigour ?? 1);

/** The one height that is known, the year it belongs to, and whether that year's growth is still to come. */
interface KnownHeight {
  readonly heightM: number;
  readonly year: number;
  readonly atPlanting: boolean;
}

function knownHeight(plant: WoodyPlant, baseYear: number): KnownHeight {
  const { heightM, plantedYear } = plant;
  if (heightM !== undefined && (plant.measuredYear !== undefined || plantedYear === undefined)) {
    return { heightM, year: plant.measuredYear ?? baseYear, atPlanting: false };
  }
  if (plantedYear !== undefined || plant.status === 'planned') {
    return { heightM: heightM ?? PLANTING_HEIGHT_M, year: plantedYear ?? baseYear, atPlanting: true };
  }
  return { heightM: plant.standingHeightM ?? UNKNOWN_HEIGHT_M, year: baseYear, atPlanting: false };
}

/**
 * Height (m) at the end of the growing season that starts in `calendarYear`; null while it is not planted yet and
 * from the year of its removal on.
 *
 * A measured height is the height at the end of its year's season. A height at planting is the height before it, so
 * that the first season in the ground already adds to it. The age on the curve is shifted to meet the height, and the
 * curve is followed both ways. At 0.95 of the species' final height or more it stays.
 */
export function woodyHeightAt(
  plant: WoodyPlant,
  calendarYear: number,
  baseYear: number,
  pace: Pace,
): number | null {
  if (plant.removedYear !== undefined && calendarYear >= plant.removedYear) return null;
  if (plant.plantedYear !== undefined && calendarYear < plant.plantedYear) return null;
  const known = knownHeight(plant, baseYear);
  if (!plant.curve) return known.heightM;
  const usual = curveOnSite(plant.curve, sizeFactor(plant), 'usual');
  const curve = curveOnSite(plant.curve, sizeFactor(plant), pace);
  const fullGrownM = FULL_GROWN_SHARE * Math.min(usual.maxHeightM, curve.maxHeightM);
  if (known.heightM >= fullGrownM) return known.heightM;
  const seasons = calendarYear - known.year + (known.atPlanting ? 1 : 0);
  if (seasons === 0) return known.heightM;
  // Before its measured year a tree may have been younger than the curve's first year: it was at least a young plant.
  const leastM = Math.min(known.heightM, PLANTING_HEIGHT_M);
  return Math.max(leastM, heightAtAge(curve, ageAtHeight(curve, known.heightM) + seasons));
}

function crownBase(plant: WoodyPlant, heightM: number, knownM: number): number {
  if (plant.crownBaseM === undefined) return heightM * (plant.clearStemShare ?? UNKNOWN_CLEAR_STEM_SHARE);
  const measuredShare = plant.crownBaseM < knownM ? plant.crownBaseM / knownM : 0;
  return Math.min(plant.crownBaseM, heightM * Math.max(MOST_CLEAR_STEM_SHARE, measuredShare));
}

/**
 * Height, crown radius and crown base (m) of a tree at the end of the growing season that starts in `calendarYear`;
 * null while it is not planted yet and from the year of its removal on.
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
  const heightM = woodyHeightAt(plant, calendarYear, baseYear, pace);
  if (heightM === null) return null;
  const factor = sizeFactor(plant);
  const rule = plant.spread ?? null;
  const knownM = knownHeight(plant, baseYear).heightM;
  let radiusM = crownDiameterM(rule, heightM, factor) / 2;
  if (plant.crownRadiusM !== undefined) {
    const pinM = plant.heightM ?? (plant.curve ? plant.curve.maxHeightM * factor : knownM);
    radiusM *= plant.crownRadiusM / (crownDiameterM(rule, pinM, factor) / 2);
  }
  return { heightM, crownRadiusM: radiusM, crownBaseM: crownBase(plant, heightM, knownM) };
}
