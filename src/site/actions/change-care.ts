import { sameContent } from '../../numeric/same-content.ts';
import type { FeatureId, SiteDocument } from '../document.ts';
import type { CareRecord } from '../records/care.ts';
import { addCare } from './add-care.ts';
import { takeAwayCare } from './take-away-care.ts';

/**
 * Puts one piece of care in the place of another, in every given plant that has it.
 * @throws BadInputError for an id that is not there or no plant, or for care that is not sound.
 */
export function changeCare(
  document: SiteDocument,
  ids: readonly FeatureId[],
  from: CareRecord,
  to: CareRecord,
): SiteDocument {
  const chosen = new Set(ids);
  const having = document.features.filter(
    ({ id, properties }) =>
      chosen.has(id) &&
      'care' in properties &&
      Array.isArray(properties.care) &&
      properties.care.some((each) => sameContent(each, from)),
  );
  const their = having.map(({ id }) => id);
  return addCare(takeAwayCare(document, their, from), their, to);
}
