import type { FeatureId, SiteDocument, SiteFeature } from '../document.ts';
import { freeId, takenIds } from '../feature-ids.ts';
import { featureById } from '../find-feature.ts';
import { carriedCoordinates, firstPlace, placeBeside } from '../places.ts';
import { validated } from '../validate-document.ts';
import { withCoordinates } from './change-features.ts';
import { freeTag } from './free-tag.ts';

/**
 * Copies features beside themselves. A copy is not the thing itself: a copied tree gets the next free tag of its
 * letter, and a copied field is not taken.
 * @returns the new document and the ids of the copies, in the order of `ids`.
 */
export function duplicateFeatures(
  document: SiteDocument,
  ids: readonly FeatureId[],
  eastM: number,
  northM: number,
): { document: SiteDocument; ids: FeatureId[] } {
  const taken = takenIds(document);
  const tags = new Set(
    document.features.map((f) => (f.properties.kind === 'tree' ? f.properties.tag : undefined)),
  );
  const copies = ids.map((original) => {
    const feature = featureById(document, original);
    const from = firstPlace(feature.geometry.coordinates);
    const id = freeId(feature.properties.kind, taken);
    taken.add(id);
    const moved = withCoordinates(
      feature,
      carriedCoordinates(feature.geometry.coordinates, from, placeBeside(from, eastM, northM)),
    );
    return { ...moved, id, properties: propertiesOfCopy(feature, tags) } as SiteFeature;
  });
  return {
    document: validated({ ...document, features: [...document.features, ...copies] }, document),
    ids: copies.map((copy) => copy.id),
  };
}

/** Adds the tag it gives to `tags`. */
function propertiesOfCopy(feature: SiteFeature, tags: Set<string | undefined>): SiteFeature['properties'] {
  const { properties } = feature;
  if (properties.kind === 'field') {
    const { taken: _, ...rest } = properties;
    return rest;
  }
  if (properties.kind !== 'tree' || properties.tag === undefined) return properties;
  const tag = freeTag(properties.tag, tags);
  tags.add(tag);
  return { ...properties, tag };
}
