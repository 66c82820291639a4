import type { FeatureId, SiteDocument } from '../document.ts';
import { featureById } from '../find-feature.ts';

/** @throws BadInputError for an id that is not there. */
export function deleteFeatures(document: SiteDocument, ids: readonly FeatureId[]): SiteDocument {
  for (const id of ids) featureById(document, id);
  const gone = new Set(ids);
  return { ...document, features: document.features.filter((feature) => !gone.has(feature.id)) };
}
