import { type CareTime, careUpTo } from './care.ts';
import { knownHeight } from './known-height.ts';
import type { WoodyPlant } from './woody-plant.ts';

/** The year in whose winter it is planted; undefined: it stands there, since nobody knows when. */
export const plantingYear = (
  { plantedYear, status, heightM }: WoodyPlant,
  baseYear: number,
): number | undefined =>
  plantedYear ?? (status === 'planned' && heightM === undefined ? baseYear : undefined);

/** What is done up to a year; in the winter of planting and before there is nothing to be done. */
function doneUpTo(plant: WoodyPlant, calendarYear: number, baseYear: number): CareTime[] {
  const planted = plantingYear(plant, baseYear);
  const times = careUpTo(plant.care, calendarYear);
  return planted === undefined ? times : times.filter(({ year }) => year > planted);
}

/** A height that was found after a replacement is that of the plant which stands there now. */
function isKnownSince(plant: WoodyPlant, replacedIn: number, baseYear: number): boolean {
  const known = knownHeight(plant, baseYear);
  return plant.heightM !== undefined && !known.atPlanting && replacedIn < known.cutsFromYear;
}

/** Who stands in the place in a year, whether or not it is alive. */
export interface Occupant {
  /** Botanical name; undefined: the plant's own. */
  readonly species: string | undefined;
  /** True while what was said of size and crown is said of it. */
  readonly isDescribed: boolean;
}

/** The plant of a year: the first one there, or what it was replaced with last. */
export function occupantAt(plant: WoodyPlant, calendarYear: number, baseYear: number): Occupant {
  if (!plant.care?.some(({ what }) => what === 'replace')) return { species: undefined, isDescribed: true };
  const times = doneUpTo(plant, calendarYear, baseYear).filter(({ what }) => what === 'replace');
  const last = times.at(-1);
  return {
    // "The same again" is the same as the one before it.
    species: times.findLast(({ species }) => species !== undefined)?.species,
    isDescribed: !last || isKnownSince(plant, last.year, baseYear),
  };
}

/** A plant as one that was never replaced, and what was done to it since it stands there. */
export interface StandingPlant {
  readonly plant: WoodyPlant;
  readonly times: readonly CareTime[];
}

/** The plant that stands in the place in a year; null: none does, or it died. */
export function standingPlant(
  plant: WoodyPlant,
  calendarYear: number,
  baseYear: number,
): StandingPlant | null {
  if (plant.removedYear !== undefined && calendarYear >= plant.removedYear) return null;
  if (plant.plantedYear !== undefined && calendarYear < plant.plantedYear) return null;
  if (!plant.care) return { plant, times: [] };
  const all = doneUpTo(plant, calendarYear, baseYear);
  const lastReplaced = all.findLastIndex(({ what }) => what === 'replace');
  const since = all.slice(lastReplaced + 1);
  if (since.some(({ what }) => what === 'die')) return null;
  if (lastReplaced < 0) return { plant, times: since };
  const { year } = all[lastReplaced];
  const times = since.filter((time) => time.year > year);
  if (isKnownSince(plant, year, baseYear)) return { plant, times };
  const { status, spread, curve, clearStemShare, rootstockFactor, vigour, speeds, shootsAgain } = plant;
  // What was found out of the one that was felled says nothing of the next.
  return {
    plant: {
      status,
      spread,
      curve,
      clearStemShare,
      rootstockFactor,
      vigour,
      speeds,
      shootsAgain,
      plantedYear: year,
    },
    times,
  };
}
