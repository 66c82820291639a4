import { findSpecies } from '../plants/find-species.ts';
import type { FeatureOf, SiteDocument } from '../site/document.ts';

/** How a draughtsman marks a crown: the outline's weight and dash tell what the tree is for. */
export type PlantMark = 'nut' | 'fruit' | 'nurse' | 'other';

const MARKS: Record<string, PlantMark> = { N: 'nut', F: 'fruit', A: 'nurse' };

/**
 * From the letter of the tag, else from what its species is mainly there for.
 * @param species the one that stands there in the shown year: another than the tree's own took its place, not its letter.
 */
export function plantMark(
  tree: FeatureOf<'tree'>,
  siteSpecies: SiteDocument['site']['species'],
  species = tree.properties.species,
): PlantMark {
  const isOwn = species === tree.properties.species;
  const letter =
    isOwn &&
    tree.properties.tag
      ?.trim()
      .toUpperCase()
      .match(/^[A-Z]/)?.[0];
  if (letter) return MARKS[letter] ?? 'other';
  return MARKS[roleOf(species, siteSpecies) ?? ''] ?? 'other';
}

function roleOf(species: string | undefined, siteSpecies: SiteDocument['site']['species']): string | null {
  try {
    return findSpecies(species, siteSpecies)?.role ?? null;
  } catch {
    // The site's own species list is wrong; the document's check says so, the drawing goes on.
    return null;
  }
}
