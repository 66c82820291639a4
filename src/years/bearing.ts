import { findSpecies } from '../plants/find-species.ts';
import type { GrowthMoment } from '../scene/options.ts';
import { treeAtYear } from '../scene/stand-at-year.ts';
import { chosenFeatures, featuresOfKind } from '../site/chosen-features.ts';
import type { FeatureOf, SiteDocument } from '../site/document.ts';

/** A tree of a species that bears a crop, and the height from which on it does. */
export interface BearingTree {
  readonly tree: FeatureOf<'tree'>;
  /** Common name of its species. */
  readonly speciesName: string;
  readonly yearsToBear: number;
  readonly bearsAtM: number;
}

/**
 * The trees of a layout that bear a crop. A species bears so many years after planting, at usual growth, as the
 * catalogue says (common practice, no source); a tree bears while it is at least as tall as it would be then (our
 * guess): a slow one later, a sheltered one sooner, one that was coppiced not before it has grown again.
 */
export function bearingTrees(document: SiteDocument, layout: string | null): BearingTree[] {
  const { baseYear } = document.site;
  return featuresOfKind(chosenFeatures(document, layout), 'tree').flatMap((tree) => {
    const species = findSpecies(tree.properties.species, document.site.species);
    if (!species || species.yearsToBear === null) return [];
    const { rootstock, species: name, plantedYear = baseYear } = tree.properties;
    // As it would stand if it was planted small and left alone.
    const properties = {
      kind: 'tree' as const,
      status: 'planned' as const,
      species: name,
      rootstock,
      plantedYear,
    };
    const year = plantedYear - baseYear + species.yearsToBear;
    const stand = treeAtYear(document, { ...tree, properties }, { year, layout, pace: 'usual' });
    return [
      {
        tree,
        speciesName: species.commonName,
        yearsToBear: species.yearsToBear,
        bearsAtM: stand?.heightM ?? Number.POSITIVE_INFINITY,
      },
    ];
  });
}

/** A hair's breadth: the same height worked out in two ways. */
const SAME_M = 1e-6;

/** Whether it bears in a year. */
export function bearsAt(
  document: SiteDocument,
  { tree, bearsAtM }: BearingTree,
  moment: GrowthMoment,
): boolean {
  const stand = treeAtYear(document, tree, moment);
  return stand !== null && stand.heightM >= bearsAtM - SAME_M;
}

/** The first of some years in which it bears; null: in none. @param years rising. */
export const bearsFrom = (
  document: SiteDocument,
  tree: BearingTree,
  years: readonly number[],
  momentAt: (year: number) => GrowthMoment,
): number | null => years.find((year) => bearsAt(document, tree, momentAt(year))) ?? null;
