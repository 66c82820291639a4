import { findSpecies } from '../plants/find-species.ts';
import { ROLES } from '../plants/species.ts';
import { type CareEffect, careEffect } from '../scene/care-effect.ts';
import { workOn } from '../scene/care-list.ts';
import type { CareWording } from '../site/care-words.ts';
import { chosenFeatures } from '../site/chosen-features.ts';
import type { FeatureId, SiteDocument } from '../site/document.ts';
import type { CareRecord } from '../site/records/care.ts';
import { rowOfTree } from '../site/row-of-tree.ts';
import { isWoody, type Woody } from '../site/woody.ts';
import { formatLength } from './format-measure.ts';
import { plural } from './format-words.ts';
import type { UnitSystem } from './model.ts';

export { CARE_CAUTIONS } from '../plants/care-cautions.ts';
export type { CareEffect } from '../scene/care-effect.ts';

/** The years that care is drawn over. */
export const CARE_YEARS = 40;

/** How care is said on the screen. */
export const careWording = (
  siteSpecies: SiteDocument['site']['species'],
  units: UnitSystem,
): CareWording => ({
  length: (lengthM) => formatLength(lengthM, units).replace(/\.0(?=\D)/, ''),
  plant: (name) => findSpecies(name, siteSpecies)?.commonName ?? name,
});

/** Plants that may be cared for in one step. */
export interface CareGroup {
  readonly value: 'one' | 'row' | 'species' | 'role';
  readonly label: string;
  readonly ids: readonly FeatureId[];
}

const WORDS = { tree: 'tree', belt: 'belt', block: 'wood' } as const;

/** The plant alone, its row, all of its species, all that serve what it serves; no two of the same plants. */
export function careGroups(document: SiteDocument, layout: string | null, feature: Woody): CareGroup[] {
  const { kind, species } = feature.properties;
  const word = WORDS[kind];
  const alike = chosenFeatures(document, layout)
    .filter(isWoody)
    .filter((other) => other.properties.kind === kind);
  const idsOf = (belongs: (other: Woody) => boolean) => alike.filter(belongs).map(({ id }) => id);
  const knownAs = (other: Woody) => findSpecies(other.properties.species, document.site.species);
  const known = knownAs(feature);
  const groups: CareGroup[] = [{ value: 'one', label: `this ${word} alone`, ids: [feature.id] }];
  const add = (value: CareGroup['value'], ids: readonly FeatureId[], label: string) => {
    if (ids.length > (groups.at(-1)?.ids.length ?? 0)) groups.push({ value, ids, label });
  };
  if (kind === 'tree') {
    const row = rowOfTree(document, layout, feature as Parameters<typeof rowOfTree>[2]);
    add('row', row, `the ${plural(row.length, 'tree')} of its row`);
  }
  const ofSpecies = idsOf((other) => species !== undefined && other.properties.species === species);
  add('species', ofSpecies, `every ${known?.commonName ?? species} ${word}, ${ofSpecies.length}`);
  const ofRole = idsOf((other) => known !== null && knownAs(other)?.role === known.role);
  const role = known ? ROLES[known.role].split(',')[0] : '';
  add('role', ofRole, `every ${role} ${word}, ${ofRole.length}`);
  return groups;
}

/** What is to be minded of one piece of care of a plant, the first time that it is done. */
export function cautionsOf(document: SiteDocument, feature: Woody, care: CareRecord): readonly string[] {
  const { needless, cautions } = workOn(document, feature, care);
  const followed = typeof care.species === 'string' ? findSpecies(care.species, document.site.species) : null;
  return [
    ...(needless ? ['It is lower than that by then: nothing is cut.'] : cautions),
    ...(followed?.cautions ?? []),
  ];
}

/** The plant with one piece of care more, in the place of another where one is changed. */
const withCare = (feature: Woody, added: CareRecord, instead: CareRecord | null): Woody =>
  ({
    ...feature,
    properties: {
      ...feature.properties,
      care: [...(feature.properties.care ?? []).filter((care) => care !== instead), added],
    },
  }) as Woody;

/** Heights with and without the care of a plant, and with what is being thought of; null: there is nothing to show. */
export function effectOfCare(
  document: SiteDocument,
  feature: Woody,
  thoughtOf: CareRecord | null,
  instead: CareRecord | null,
): CareEffect | null {
  if (!thoughtOf && !feature.properties.care) return null;
  const plant = thoughtOf ? withCare(feature, thoughtOf, instead) : feature;
  return careEffect(document, plant, CARE_YEARS);
}

/** What the chosen kind of work starts with: usual sizes for the plant's height in that year. Common practice, no source. */
export function usualCare(
  document: SiteDocument,
  feature: Woody,
  what: CareRecord['what'],
  year: number,
): CareRecord {
  const { heightBeforeM } = workOn(document, feature, { what, year });
  const heightM = heightBeforeM ?? 6;
  const rounded = (lengthM: number) => Math.max(0.5, Math.floor(2 * lengthM) / 2);
  switch (what) {
    case 'pollard':
      return { what, year, heightM: Math.min(2.5, rounded(0.6 * heightM)), everyYears: 5 };
    case 'coppice':
      return { what, year, everyYears: 7 };
    case 'raiseCrown':
      return { what, year, heightM: Math.min(2.5, rounded(heightM / 3)) };
    case 'cutTo':
      return { what, year, heightM: rounded((2 / 3) * heightM) };
    case 'thin':
      return { what, year, share: 0.2 };
    default:
      return { what, year };
  }
}

/** The first winter in which there is something to be done: that of the shown year, once it is planted. */
export function firstWinter(document: SiteDocument, { properties }: Woody, shownYear: number): number {
  const { baseYear } = document.site;
  return Math.max(baseYear + Math.max(1, shownYear), (properties.plantedYear ?? baseYear) + 1);
}
