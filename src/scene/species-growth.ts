import { crownDiameterM } from '../growth/crown-spread.ts';
import { curveOnSite, heightAfterSeasons, type Pace } from '../growth/height-curve.ts';
import { PLANTING_HEIGHT_M } from '../growth/known-height.ts';
import { LEAF_CALENDARS, type LeafDays, leafDays } from '../growth/leaf-calendar.ts';
import { beltHabitOf } from '../plants/crown-density.ts';
import { findSpecies } from '../plants/find-species.ts';
import type { BeltHabit, Rootstock, Species } from '../plants/species.ts';
import { chosenFeatures } from '../site/chosen-features.ts';
import type { SiteDocument } from '../site/document.ts';
import { isWoody } from '../site/woody.ts';
import { siteCentre } from './site-ground.ts';

export const PACES: readonly Pace[] = ['slow', 'usual', 'fast'];
export type ByPace = Readonly<Record<Pace, number>>;

/** Size so many growing seasons after planting, m. */
export interface SizeAfter {
  readonly seasons: number;
  readonly heightM: ByPace;
  readonly spreadM: ByPace;
}

/** How a species grows on a site, from a plant of usual size. */
export interface SpeciesGrowth {
  readonly species: Species;
  readonly rootstock: Rootstock | null;
  /** Final size against usual ground: site times species. */
  readonly vigour: number;
  readonly sizes: readonly SizeAfter[];
  /** Null: evergreen. */
  readonly leaves: LeafDays | null;
  /** Share of the leaves that stays through the winter. */
  readonly winterShare: number;
  readonly belt: BeltHabit;
}

/** The species that grow on a site in a layout, by their common names. */
export function speciesOnSite(document: SiteDocument, layout: string | null): Species[] {
  const found = new Set<Species>();
  for (const { properties } of chosenFeatures(document, layout).filter(isWoody)) {
    const species = findSpecies(properties.species, document.site.species);
    if (species) found.add(species);
  }
  return [...found].sort((a, b) => a.commonName.localeCompare(b.commonName));
}

/** Seasons after planting that a table shows. */
export const TABLE_SEASONS: readonly number[] = [0, 5, 10, 20, 40];

/** @param seasons after planting, rising. */
export function speciesGrowth(
  document: SiteDocument,
  species: Species,
  rootstock: Rootstock | null,
  seasons: readonly number[] = TABLE_SEASONS,
): SpeciesGrowth {
  const vigour = (document.site.vigour ?? 1) * species.vigour;
  const sizeFactor = vigour * (rootstock?.sizeFactor ?? 1);
  const byPace = (of: (pace: Pace) => number): ByPace => ({
    slow: of('slow'),
    usual: of('usual'),
    fast: of('fast'),
  });
  const calendar = LEAF_CALENDARS[species.leafClass];
  return {
    species,
    rootstock,
    vigour,
    sizes: seasons.map((after) => {
      const heightM = byPace((pace) =>
        heightAfterSeasons(curveOnSite(species.curve, sizeFactor, pace), PLANTING_HEIGHT_M, after),
      );
      return {
        seasons: after,
        heightM,
        spreadM: byPace((pace) => crownDiameterM(species.spread, heightM[pace], sizeFactor)),
      };
    }),
    leaves: leafDays(calendar, siteCentre(document)[1]),
    winterShare: calendar.winterShare,
    belt: beltHabitOf(species),
  };
}
