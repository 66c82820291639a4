import type { SceneOptions } from '../scene/options.ts';
import { ownersOf } from '../scene/owners.ts';
import { labelOf } from '../scene/things.ts';
import { chosenFeatures, isOfKind } from '../site/chosen-features.ts';
import type { FeatureId, SiteDocument, SiteFeature } from '../site/document.ts';
import { BELT_YEARS, type FieldStateKey } from './choose-types.ts';

const isPlanned = ({ properties }: SiteFeature): boolean =>
  'status' in properties && properties.status === 'planned';

/** The site with some things gone besides those that are gone already. */
function without(options: SceneOptions, ids: readonly FeatureId[]): SceneOptions {
  const already = options.felled && options.felled.fromYear <= options.year ? options.felled.ids : [];
  return { ...options, felled: { ids: [...already, ...ids], fromYear: 0 } };
}

/**
 * The states in which fields are compared: as they stand, and with planned belts, woods and nets, but not with planned
 * trees: which trees to plant is asked when the ground is chosen.
 */
export function fieldStates(document: SiteDocument, options: SceneOptions): Map<FieldStateKey, SceneOptions> {
  const planned = chosenFeatures(document, options.layout).filter(isPlanned);
  const trees = planned.filter((feature) => isOfKind(feature, 'tree')).map(({ id }) => id);
  const all = planned.map(({ id }) => id);
  return new Map<FieldStateKey, SceneOptions>([
    ['stands', without({ ...options, year: 0 }, all)],
    ...BELT_YEARS.map((year) => [year, without({ ...options, year }, trees)] as const),
  ]);
}

/** What stands at a field's edge and of which the file says whose it is: what has no owner is the person's own. */
export interface ForeignEdge {
  readonly id: FeatureId;
  readonly label: string;
  readonly owner: string;
}

/** Belts and woods of a layout that stand there and belong to somebody else. */
export function foreignEdges(document: SiteDocument, layout: string | null): ForeignEdge[] {
  const owners = ownersOf(document);
  return chosenFeatures(document, layout).flatMap((feature) => {
    const owner = owners.get(feature.id);
    const isEdge = isOfKind(feature, 'belt') || isOfKind(feature, 'block');
    if (!owner || !isEdge || isPlanned(feature)) return [];
    return [{ id: feature.id, label: labelOf(document, feature), owner }];
  });
}

/** The state as it stands, with one thing gone. */
export const standsWithout = (stands: SceneOptions, id: FeatureId): SceneOptions => without(stands, [id]);
