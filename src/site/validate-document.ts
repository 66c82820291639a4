import { BadInputError } from '../units/bad-input.ts';
import type { SiteDocument, SiteFeature } from './document.ts';
import { issueWords } from './issue-sentence.ts';
import { siteRecord } from './records/site.ts';
import { isTimeZone } from './time-zone.ts';
import { validateFeature } from './validate-feature.ts';

/**
 * Checks the site record.
 * @throws BadInputError with the first fault found, after `where`.
 */
export function validateSiteRecord(site: unknown, where = ''): void {
  const result = siteRecord.safeParse(site);
  if (!result.success)
    throw new BadInputError(`${where}${issueWords(result.error.issues[0], site, [], ['site'])}.`);
  const { timeZone, layouts = [] } = result.data;
  if (!isTimeZone(timeZone))
    throw new BadInputError(
      `${where}site.timeZone is ${JSON.stringify(timeZone)}; expected a time zone of the IANA list such as "America/Halifax".`,
    );
  const names = layouts.map((layout) => layout.name);
  const double = names.find((name, i) => names.indexOf(name) !== i);
  if (double !== undefined)
    throw new BadInputError(
      `${where}site.layouts has ${JSON.stringify(double)} twice; expected different names.`,
    );
}

/** @throws BadInputError when two features carry the same id (1 and "1" count as the same). */
export function validateIds(features: readonly { readonly id?: unknown }[], where = ''): void {
  const seen = new Set<string>();
  for (const { id } of features) {
    if (id === undefined) continue;
    if (seen.has(String(id)))
      throw new BadInputError(
        `${where}feature ${JSON.stringify(id)}: id is given to two features; expected each id once.`,
      );
    seen.add(String(id));
  }
}

/**
 * Checks a document that an action has made. Only the features that were not in `before` are looked at: an action
 * keeps the others as they were, and a drag must not cost a walk over the whole site.
 * @returns the document itself.
 */
export function validated(document: SiteDocument, before: SiteDocument): SiteDocument {
  if (document.site !== before.site) validateSiteRecord(document.site);
  if (document.features !== before.features) {
    const known = new Set<SiteFeature>(before.features);
    for (const feature of document.features) if (!known.has(feature)) validateFeature(feature);
    validateIds([...document.features, ...(document.otherFeatures ?? [])]);
  }
  return document;
}
