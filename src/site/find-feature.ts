import { BadInputError } from '../units/bad-input.ts';
import type { FeatureId, SiteDocument, SiteFeature } from './document.ts';

/** @throws BadInputError when the document has no feature of that id. */
export function featureById(document: SiteDocument, id: FeatureId): SiteFeature {
  const found = document.features.find((feature) => feature.id === id);
  if (!found)
    throw new BadInputError(
      `Feature ${JSON.stringify(id)} is not in the site; expected the id of one that is.`,
    );
  return found;
}
