import { ageAtHeight, curveOnSite } from '../growth/height-curve.ts';
import { speciesList } from '../plants/find-species.ts';
import type { SiteDocument } from '../site/document.ts';

/**
 * Length of belt that would shelter what nothing shelters: a belt of this height cuts the wind by 30 % or more over ten
 * of its heights behind it, about the least that measured belts of middling density reach (windbreak tables in
 * wind/measured-belts.ts); across the wind, one beside another.
 */
export const BELT_HEIGHT_M = 8;
const REACH_H = 10;

/** @param shelteredShare of the field that has shelter already, 0 to 1. @returns 0 for a belt shorter than it is tall */
export function beltNeededM(areaM2: number, shelteredShare: number): number {
  const lengthM = ((1 - shelteredShare) * areaM2) / (REACH_H * BELT_HEIGHT_M);
  return lengthM < BELT_HEIGHT_M ? 0 : lengthM;
}

/** Height at which belts are planted where nothing is said (site file, "Years"). */
const PLANTED_M = 0.6;
/** What is planted to be tall and quick: shelter and nurse trees. */
const BELT_ROLES = new Set(['S', 'A']);

/** Years until a new belt is as tall as that, usual growth on this site; null: no species of the list gets there. */
export interface BeltGrowth {
  /** The middle one of the species that get there. */
  readonly years: number;
  /** The quickest and the slowest quarter of them. */
  readonly quickYears: number;
  readonly slowYears: number;
}

export function beltGrowth({ site }: SiteDocument): BeltGrowth | null {
  const years = speciesList(site.species)
    .all.flatMap(({ belt, role, curve, vigour }) => {
      if (!belt || !BELT_ROLES.has(role)) return [];
      const here = curveOnSite(curve, vigour * (site.vigour ?? 1), 'usual');
      const needed = ageAtHeight(here, BELT_HEIGHT_M) - ageAtHeight(here, PLANTED_M);
      return Number.isFinite(needed) ? [needed] : [];
    })
    .sort((a, b) => a - b);
  if (years.length === 0) return null;
  const at = (share: number) => Math.round(years[Math.floor(share * (years.length - 1))]);
  return { years: at(0.5), quickYears: at(0.25), slowYears: at(0.75) };
}
