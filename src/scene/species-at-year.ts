import { occupantAt } from '../growth/standing-plant.ts';
import { findSpecies } from '../plants/find-species.ts';
import type { Species } from '../plants/species.ts';
import type { SiteDocument } from '../site/document.ts';
import type { Woody } from '../site/woody.ts';

/** What stands in a plant's place in a year: the botanical name as the file writes it, and what follows from it. */
export interface StandingKind {
  readonly name: string | undefined;
  /** Null: the file names none, or none that is known. */
  readonly species: Species | null;
  /** True while what was said of its size, crown and foot is said of it. */
  readonly isDescribed: boolean;
  /** True where another species than the plant's own took its place: what was said of the first says nothing of it. */
  readonly isAnother: boolean;
}

/** The kind of plant that stands there in a calendar year: its own, or what it was replaced with. */
export function kindAtYear(
  { site }: SiteDocument,
  { properties }: Woody,
  calendarYear: number,
): StandingKind {
  const own = properties.species;
  const { species: followed, isDescribed } = occupantAt(properties, calendarYear, site.baseYear);
  const name = followed ?? own;
  return {
    name,
    species: findSpecies(name, site.species),
    isDescribed,
    isAnother: !isDescribed && name !== own,
  };
}
