import type { FeatureId, SiteDocument, SiteFeature } from '../document.ts';
import { featureById } from '../find-feature.ts';
import { validated } from '../validate-document.ts';

/**
 * The document with some features changed by a pure function, the others untouched and in their places.
 * @throws BadInputError for an id that is not there, or when the outcome is not sound.
 */
export function changeFeatures(
  document: SiteDocument,
  ids: readonly FeatureId[],
  change: (feature: SiteFeature) => SiteFeature,
): SiteDocument {
  for (const id of ids) featureById(document, id);
  const chosen = new Set(ids);
  const features = document.features.map((feature) => (chosen.has(feature.id) ? change(feature) : feature));
  return validated({ ...document, features }, document);
}

/** The same feature elsewhere; its box, if it had one, is worked out again on saving. */
export const withCoordinates = (feature: SiteFeature, coordinates: unknown): SiteFeature =>
  ({ ...feature, geometry: { ...feature.geometry, coordinates } }) as SiteFeature;
