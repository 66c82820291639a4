import { sameContent } from '../../numeric/same-content.ts';
import type { FeatureId, SiteDocument } from '../document.ts';
import type { CareRecord } from '../records/care.ts';
import { changeCareOf } from './change-care-of.ts';

/**
 * Adds one piece of care to some plants, in the order of years; a plant that has the very same already keeps it once.
 * @throws BadInputError for an id that is not there or no plant, or for care that is not sound.
 */
export const addCare = (document: SiteDocument, ids: readonly FeatureId[], added: CareRecord): SiteDocument =>
  changeCareOf(document, ids, (care) =>
    care.some((each) => sameContent(each, added))
      ? [...care]
      : [...care, added].toSorted((a, b) => a.year - b.year),
  );
