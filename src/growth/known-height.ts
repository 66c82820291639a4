import type { WoodyPlant } from './woody-plant.ts';

/** Height of a plant at planting where none is given, m (site file, "Years"). */
export const PLANTING_HEIGHT_M = 0.6;
/** Height of something that stands there already and of which nothing else is known, m. Common practice, no source. */
const UNKNOWN_HEIGHT_M = 6;

/** The one height that is known, the year it belongs to, and whether that year's growth is still to come. */
export interface KnownHeight {
  readonly heightM: number;
  readonly year: number;
  readonly atPlanting: boolean;
  /** Cuts from this year's winter on are not in the height yet. */
  readonly cutsFromYear: number;
}

export function knownHeight(plant: WoodyPlant, baseYear: number): KnownHeight {
  const { heightM, plantedYear, measuredYear } = plant;
  if (heightM !== undefined && (measuredYear !== undefined || plantedYear === undefined)) {
    // A height without a year is that of the base year's end if nothing is done before.
    const cutsFromYear = measuredYear === undefined ? baseYear : measuredYear + 1;
    return { heightM, year: measuredYear ?? baseYear, atPlanting: false, cutsFromYear };
  }
  if (plantedYear !== undefined || plant.status === 'planned') {
    const year = plantedYear ?? baseYear;
    return { heightM: heightM ?? PLANTING_HEIGHT_M, year, atPlanting: true, cutsFromYear: year + 1 };
  }
  const unknownM = plant.standingHeightM ?? UNKNOWN_HEIGHT_M;
  return { heightM: unknownM, year: baseYear, atPlanting: false, cutsFromYear: baseYear };
}
