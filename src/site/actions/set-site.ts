import type { SiteDocument } from '../document.ts';
import type { SiteRecord } from '../records/site.ts';
import { validated } from '../validate-document.ts';

/**
 * Sets members of the site record; a value of undefined removes the member. The format version stays.
 * @throws BadInputError when a value is not allowed.
 */
export function setSite(document: SiteDocument, values: Partial<SiteRecord>): SiteDocument {
  const site: Record<string, unknown> = {
    ...document.site,
    ...values,
    formatVersion: document.site.formatVersion,
  };
  for (const key of Object.keys(values)) if (site[key] === undefined) delete site[key];
  return validated({ ...document, site: site as SiteRecord }, document);
}
