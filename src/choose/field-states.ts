import type { SceneOptions } from '../scene/options.ts';
import { ownersOf } from '../scene/owners.ts';
import { labelOf } from '../scene/things.ts';
import { chosenFeatures, isOfKind } from '../site/chosen-features.ts';
import type { FeatureId, FeatureOf, SiteDocument, SiteFeature } from '../site/document.ts';
import { CHOOSING_YEARS } from '../site/records/choosing.ts';
import type { FieldStateKey } from './choose-types.ts';

/** Not there yet: what is planned, and walls, fences and nets that come with the base year or later. */
function isPlanned(feature: SiteFeature, baseYear: number): boolean {
  if (isOfKind(feature, 'wall')) return (feature.properties.fromYear ?? -Infinity) >= baseYear;
  return 'status' in feature.properties && feature.properties.status === 'planned';
}

/** The site with some things gone besides those that are gone already. */
function without(options: SceneOptions, ids: readonly FeatureId[]): SceneOptions {
  const already = options.felled && options.felled.fromYear <= options.year ? options.felled.ids : [];
  return { ...options, felled: { ids: [...already, ...ids], fromYear: 0 } };
}

const plannedFeatures = (document: SiteDocument, layout: string | null): SiteFeature[] =>
  chosenFeatures(document, layout).filter((feature) => isPlanned(feature, document.site.baseYear));

/**
 * The states in which fields are compared: as they stand, and with planned belts, woods and nets, but not with planned
 * trees: which trees to plant is asked when the ground is chosen.
 */
export function fieldStates(document: SiteDocument, options: SceneOptions): Map<FieldStateKey, SceneOptions> {
  const planned = plannedFeatures(document, options.layout);
  const trees = planned.filter((feature) => isOfKind(feature, 'tree')).map(({ id }) => id);
  const all = planned.map(({ id }) => id);
  return new Map<FieldStateKey, SceneOptions>([
    ['stands', without({ ...options, year: 0 }, all)],
    ...CHOOSING_YEARS.map((year) => [year, without({ ...options, year }, trees)] as const),
  ]);
}

/** With planned belts in any year, but without what is taken away again: nets bridge, they do not last. */
export function lasting(document: SiteDocument, withBelts: SceneOptions): SceneOptions {
  const nets = chosenFeatures(document, withBelts.layout).filter(
    (feature) => isOfKind(feature, 'wall') && feature.properties.toYear !== undefined,
  );
  return without(
    withBelts,
    nets.map(({ id }) => id),
  );
}

/** What stands at a field's edge and of which the file says whose it is: what has no owner is the person's own. */
export interface ForeignEdge {
  readonly feature: FeatureOf<'belt'> | FeatureOf<'block'>;
  readonly id: FeatureId;
  readonly label: string;
  readonly owner: string;
}

/** Belts and woods of a layout that stand there and belong to somebody else. */
export function foreignEdges(document: SiteDocument, layout: string | null): ForeignEdge[] {
  const owners = ownersOf(document);
  return chosenFeatures(document, layout).flatMap((feature) => {
    const owner = owners.get(feature.id);
    if (!owner || !(isOfKind(feature, 'belt') || isOfKind(feature, 'block'))) return [];
    if (isPlanned(feature, document.site.baseYear)) return [];
    return [{ feature, id: feature.id, label: labelOf(document, feature), owner }];
  });
}

/** The state as it stands, with some things gone. */
export const standsWithout = without;
