import { findSpecies } from '../plants/find-species.ts';
import { chosenFeatures, isOfKind } from '../site/chosen-features.ts';
import type { SiteDocument, SiteFeature } from '../site/document.ts';
import { isWoody } from '../site/woody.ts';
import type { StandingTree } from './build-crowns.ts';
import type { StandingBuilding, StandingWindbreak } from './build-prisms.ts';
import type { GrowthMoment, SceneThing } from './options.ts';
import { kindAtYear } from './species-at-year.ts';
import { beltOrBlockAtYear, buildingHeightM, treeAtYear, wallAtYear } from './stand-at-year.ts';

const KIND_WORDS: Partial<Record<SiteFeature['properties']['kind'], string>> = {
  belt: 'belt',
  block: 'wood',
  wall: 'wall',
  building: 'building',
  tree: 'Tree',
};

/**
 * What to call a feature in a sentence: "Walnut N2", "Norway spruce belt", "Barn".
 * @param calendarYear what stands there then, where it was replaced; absent: what the file says stands there first.
 */
export function labelOf(document: SiteDocument, feature: SiteFeature, calendarYear?: number): string {
  const { properties } = feature;
  const then =
    calendarYear !== undefined && isWoody(feature) ? kindAtYear(document, feature, calendarYear) : null;
  const isAnother = then?.isAnother === true;
  const botanical = then ? then.name : 'species' in properties ? properties.species : undefined;
  const species =
    typeof botanical === 'string'
      ? (findSpecies(botanical, document.site.species)?.commonName ?? botanical)
      : null;
  const word = KIND_WORDS[properties.kind] ?? properties.kind;
  if (properties.kind === 'tree') {
    const own = isAnother ? undefined : (properties.name ?? properties.variety);
    const name = own ?? species ?? word;
    return properties.tag ? `${name} ${properties.tag}` : name;
  }
  if (properties.name) return properties.name;
  const mixed =
    !isAnother &&
    'alsoSpecies' in properties &&
    Array.isArray(properties.alsoSpecies) &&
    properties.alsoSpecies.length > 0
      ? 'mixed '
      : '';
  const label = species ? `${mixed}${species} ${word}` : word;
  return label.charAt(0).toUpperCase() + label.slice(1);
}

/** Everything that shades or shelters at one moment. */
export interface Standing {
  readonly things: readonly SceneThing[];
  readonly trees: readonly StandingTree[];
  readonly breaks: readonly StandingWindbreak[];
  readonly buildings: readonly StandingBuilding[];
}

const isFelled = ({ id }: SiteFeature, { felled, year }: GrowthMoment): boolean =>
  felled ? year >= felled.fromYear && felled.ids.includes(id) : false;

/**
 * What stands in the chosen year of the chosen layout; plants not there yet and things gone are left out.
 * @param momentOf a moment for each feature instead of the one; null: it is not there.
 */
export function standingAt(
  document: SiteDocument,
  moment: GrowthMoment,
  momentOf: (feature: SiteFeature) => GrowthMoment | null = () => moment,
): Standing {
  const things: SceneThing[] = [];
  const trees: StandingTree[] = [];
  const breaks: StandingWindbreak[] = [];
  const buildings: StandingBuilding[] = [];
  const name = (feature: SiteFeature): number =>
    things.push({
      id: feature.id,
      kind: feature.properties.kind,
      label: labelOf(document, feature, document.site.baseYear + moment.year),
    }) - 1;
  for (const feature of chosenFeatures(document, moment.layout)) {
    const own = momentOf(feature);
    if (!own || isFelled(feature, own)) continue;
    if (isOfKind(feature, 'tree')) {
      const stand = treeAtYear(document, feature, own);
      if (stand) trees.push({ thing: name(feature), feature, stand });
    } else if (isOfKind(feature, 'wall')) {
      const stand = wallAtYear(document, feature, own);
      if (stand) breaks.push({ thing: name(feature), feature, stand });
    } else if (isOfKind(feature, 'belt') || isOfKind(feature, 'block')) {
      const stand = beltOrBlockAtYear(document, feature, own);
      if (stand) breaks.push({ thing: name(feature), feature, stand });
    } else if (isOfKind(feature, 'building')) {
      buildings.push({
        thing: name(feature),
        feature,
        heightM: buildingHeightM(feature),
      });
    }
  }
  return { things, trees, breaks, buildings };
}
