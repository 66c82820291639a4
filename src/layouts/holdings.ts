import { lineLengthM } from '../geo/geodesic.ts';
import { findSpecies } from '../plants/find-species.ts';
import { isPlannedFeature } from '../site/common-planned.ts';
import type { FeatureOf, SiteDocument, SiteFeature } from '../site/document.ts';

/** One of a site's layouts by its name; null: what is common to all, and nothing more. */
export type LayoutName = string | null;

/** First and last calendar year; null where nothing is planted. */
export type PlantingYears = readonly [first: number, last: number] | null;

export interface Holding {
  /** Botanical name; empty: no species is given. */
  readonly species: string;
  readonly commonName: string;
  readonly trees: number;
}

/** What a layout holds over what is common to all. Lengths are geodesic, metres. */
export interface Holdings {
  /** By name of the species. */
  readonly trees: readonly Holding[];
  readonly treeCount: number;
  readonly beltM: number;
  /** Walls, fences and nets. */
  readonly wallM: number;
  readonly blocks: number;
  readonly patches: number;
  readonly plantings: number;
  readonly treesPlanted: PlantingYears;
  readonly beltsPlanted: PlantingYears;
  /** Of these, what is planned: what has to be bought. */
  readonly planned: { readonly trees: number; readonly beltM: number; readonly wallM: number };
}

/** The features that belong to a layout alone, in the order of the file. */
export const ownFeatures = (document: SiteDocument, layout: LayoutName): SiteFeature[] =>
  layout === null ? [] : document.features.filter(({ properties }) => properties.layout === layout);

export function holdingsOf(document: SiteDocument, layout: LayoutName): Holdings {
  const { baseYear } = document.site;
  const own = ownFeatures(document, layout);
  const ofKind = <K extends SiteFeature['properties']['kind']>(kind: K) =>
    own.filter((feature): feature is FeatureOf<K> => feature.properties.kind === kind);
  const trees = ofKind('tree');
  const belts = ofKind('belt');
  const walls = ofKind('wall');
  const planned = <F extends SiteFeature>(features: readonly F[]): F[] =>
    features.filter((feature) => isPlannedFeature(feature, baseYear));
  const bySpecies = new Map<string, number>();
  for (const { properties } of trees)
    bySpecies.set(properties.species ?? '', (bySpecies.get(properties.species ?? '') ?? 0) + 1);
  return {
    trees: [...bySpecies]
      .map(([species, count]) => ({
        species,
        commonName: species
          ? (findSpecies(species, document.site.species)?.commonName ?? species)
          : 'No species given',
        trees: count,
      }))
      .sort((a, b) => (a.commonName < b.commonName ? -1 : 1)),
    treeCount: trees.length,
    beltM: lengthM(belts),
    wallM: lengthM(walls),
    blocks: ofKind('block').length,
    patches: ofKind('patch').length,
    plantings: ofKind('planting').length,
    treesPlanted: plantingYears(planned(trees), baseYear),
    beltsPlanted: plantingYears(planned(belts), baseYear),
    planned: {
      trees: planned(trees).length,
      beltM: lengthM(planned(belts)),
      wallM: lengthM(planned(walls)),
    },
  };
}

const lengthM = (lines: readonly FeatureOf<'belt' | 'wall'>[]): number =>
  lines.reduce(
    (sum, { geometry }) => sum + lineLengthM(geometry.coordinates.map(([lon, lat]) => [lon, lat] as const)),
    0,
  );

function plantingYears(plants: readonly FeatureOf<'tree' | 'belt'>[], baseYear: number): PlantingYears {
  if (plants.length === 0) return null;
  const years = plants.map(({ properties }) => properties.plantedYear ?? baseYear);
  return [Math.min(...years), Math.max(...years)];
}

/** The year after the base year by which half of a layout's own planned trees are planted; null: none are. */
export function treesPlantedIn(document: SiteDocument, layout: LayoutName): number | null {
  const { baseYear } = document.site;
  const years = ownFeatures(document, layout)
    .flatMap(({ properties }) =>
      properties.kind === 'tree' && properties.status === 'planned'
        ? [(properties.plantedYear ?? baseYear) - baseYear]
        : [],
    )
    .sort((a, b) => a - b);
  return years.length === 0 ? null : years[Math.ceil(years.length / 2) - 1];
}
