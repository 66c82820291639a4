/** Which species stand in a belt or block. */
import { findSpecies } from '../plants/find-species.ts';
import { plainName } from '../plants/plain-name.ts';
import type { SiteDocument } from '../site/document.ts';
import type { BeltLike } from './belt-shape.ts';

/** The species of a belt as they are called. */
export interface Mixture {
  /** Common names, the main species first; empty: the file names none. */
  readonly names: readonly string[];
  /** Whether all are of one genus: most of what kills one then kills the others. */
  readonly oneGenus: boolean;
}

/** Each species once, however often and by whichever of its names the file has it. */
export function mixtureOf(document: SiteDocument, { properties }: BeltLike): Mixture {
  const { species, alsoSpecies = [] } = properties;
  const found = new Map<string, string>();
  for (const name of [species, ...alsoSpecies]) {
    if (!name?.trim()) continue;
    const known = findSpecies(name, document.site.species);
    const botanical = plainName(known?.botanicalName ?? name);
    if (!found.has(botanical)) found.set(botanical, known?.commonName ?? name);
  }
  const genera = new Set([...found.keys()].map((botanical) => botanical.split(' ')[0]));
  return { names: [...found.values()], oneGenus: genera.size === 1 };
}
