import { checkCare } from './checks/care.ts';
import { checkFalling } from './checks/falling.ts';
import { checkHeights } from './checks/heights.ts';
import { checkPlaces } from './checks/places.ts';
import type { CheckContext, SiteProblem } from './checks/problem.ts';
import { checkSiteRecord } from './checks/site-record.ts';
import { checkSizes } from './checks/sizes.ts';
import { checkSpecies } from './checks/species.ts';
import { checkYears } from './checks/years.ts';
import type { SiteDocument } from './document.ts';

const CHECKS = [
  checkSiteRecord,
  checkSpecies,
  checkYears,
  checkCare,
  checkSizes,
  checkHeights,
  checkPlaces,
  checkFalling,
];

/**
 * What a person should look at in a sound document, problems before notes. What makes a document unsound is refused
 * when it is read or edited, and is not looked for here.
 */
export function checkSite(document: SiteDocument, context: CheckContext = {}): SiteProblem[] {
  const found = CHECKS.flatMap((check) => check(document, context));
  return [...found.filter((p) => p.level === 'problem'), ...found.filter((p) => p.level === 'note')];
}
