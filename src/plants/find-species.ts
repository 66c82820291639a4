import { BadInputError } from '../units/bad-input.ts';
import { applySiteSpecies } from './apply-site-species.ts';
import { CATALOGUE } from './catalogue.ts';
import { editDistance, plainName } from './plain-name.ts';
import { siteSpeciesRecord } from './site-species.ts';
import type { Rootstock, Species } from './species.ts';

/** The catalogue with the site's own additions and corrections in it. */
export interface SpeciesList {
  readonly all: readonly Species[];
  readonly byName: ReadonlyMap<string, Species>;
}

function listOf(all: readonly Species[]): SpeciesList {
  const byName = new Map<string, Species>();
  for (const species of all) {
    for (const synonym of species.synonyms) byName.set(plainName(synonym), species);
  }
  for (const species of all) byName.set(plainName(species.botanicalName), species);
  return { all, byName };
}

const catalogueList = listOf(CATALOGUE);
const lists = new WeakMap<readonly unknown[], SpeciesList>();

/**
 * All species of a site. Kept for as long as the same array is handed in, so that a species is the same object each
 * time (its density is solved once).
 * @param siteSpecies the site file's `species`, as read.
 * @throws BadInputError naming the entry and property that is wrong.
 */
export function speciesList(siteSpecies: readonly unknown[] | undefined): SpeciesList {
  if (!siteSpecies || siteSpecies.length === 0) return catalogueList;
  const known = lists.get(siteSpecies);
  if (known) return known;
  const merged = new Map(CATALOGUE.map((species) => [plainName(species.botanicalName), species]));
  siteSpecies.forEach((entry, index) => {
    const parsed = siteSpeciesRecord.safeParse(entry);
    if (!parsed.success) {
      const issue = parsed.error.issues[0];
      throw new BadInputError(`site.species[${index}].${issue.path.join('.')}: ${issue.message}.`);
    }
    const record = parsed.data;
    const corrected = catalogueList.byName.get(plainName(record.name)) ?? null;
    const relative =
      record.like === undefined ? null : (catalogueList.byName.get(plainName(record.like)) ?? null);
    if (record.like !== undefined && !relative) {
      throw new BadInputError(
        `site.species[${index}].like: “${record.like}” is not in the catalogue; expected the botanical name of one that is.`,
      );
    }
    const start = relative ?? corrected;
    if (!start && record.matureHeightM === undefined) {
      throw new BadInputError(
        `site.species[${index}]: “${record.name}” is new to the catalogue; expected a matureHeightM, or “like” with the name of a relative.`,
      );
    }
    merged.set(plainName(corrected?.botanicalName ?? record.name), applySiteSpecies(start, record));
  });
  const list = listOf([...merged.values()].sort((a, b) => (a.botanicalName < b.botanicalName ? -1 : 1)));
  lists.set(siteSpecies, list);
  return list;
}

/** The species of a botanical name, however it is spaced, cased or marked as a hybrid; null: not known. */
export function findSpecies(
  botanicalName: string | null | undefined,
  siteSpecies: readonly unknown[] | undefined,
): Species | null {
  if (!botanicalName) return null;
  return speciesList(siteSpecies).byName.get(plainName(botanicalName)) ?? null;
}

/** The botanical name that was probably meant: a common name, or a spelling within a quarter of its letters; null: none near. */
export function suggestSpeciesName(name: string, siteSpecies: readonly unknown[] | undefined): string | null {
  const wanted = plainName(name);
  let best: string | null = null;
  let fewest = Math.max(2, Math.floor(wanted.length / 4)) + 1;
  for (const species of speciesList(siteSpecies).all) {
    for (const candidate of [species.botanicalName, species.commonName, ...species.synonyms]) {
      const edits = editDistance(wanted, plainName(candidate));
      if (edits < fewest) {
        fewest = edits;
        best = species.botanicalName;
      }
    }
  }
  return best;
}

/** The rootstock of a name (case and spaces do not matter); null: none of that name in the catalogue. */
export function findRootstock(species: Species | null, name: string | undefined): Rootstock | null {
  if (!species || !name) return null;
  const wanted = plainName(name).replaceAll(' ', '');
  return species.rootstocks.find((stock) => plainName(stock.name).replaceAll(' ', '') === wanted) ?? null;
}
