import { sameContent } from '../../numeric/same-content.ts';
import type { FeatureId, SiteDocument } from '../document.ts';
import type { CareRecord } from '../records/care.ts';
import { changeCareOf } from './change-care-of.ts';

/**
 * Takes one piece of care away from every given plant that has it.
 * @throws BadInputError for an id that is not there or no plant.
 */
export const takeAwayCare = (
  document: SiteDocument,
  ids: readonly FeatureId[],
  away: CareRecord,
): SiteDocument => changeCareOf(document, ids, (care) => care.filter((each) => !sameContent(each, away)));
