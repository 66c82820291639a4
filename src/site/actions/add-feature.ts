import type { FeatureId, FeatureOf, Kind, SiteDocument, SiteFeature } from '../document.ts';
import { freeId, takenIds } from '../feature-ids.ts';
import { validated } from '../validate-document.ts';

/** What is drawn before it has an id: properties with a kind, and a geometry. */
export interface Drawn<K extends Kind = Kind> {
  readonly properties: FeatureOf<K>['properties'];
  readonly geometry: FeatureOf<K>['geometry'];
}

/**
 * Adds one feature at the end.
 * @returns the new document and the id that the feature was given.
 * @throws BadInputError when the feature is not sound.
 */
export function addFeature(document: SiteDocument, drawn: Drawn): { document: SiteDocument; id: FeatureId } {
  const { document: after, ids } = addFeatures(document, [drawn]);
  return { document: after, id: ids[0] };
}

/** Adds several features in one step; ids in the order given. */
export function addFeatures(
  document: SiteDocument,
  drawn: readonly Drawn[],
): { document: SiteDocument; ids: FeatureId[] } {
  const taken = takenIds(document);
  const added = drawn.map(({ properties, geometry }) => {
    const id = freeId(properties.kind, taken);
    taken.add(id);
    return { type: 'Feature', id, properties, geometry } as SiteFeature;
  });
  return {
    document: validated({ ...document, features: [...document.features, ...added] }, document),
    ids: added.map((feature) => feature.id),
  };
}
