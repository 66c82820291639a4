import type { FeatureId, SiteDocument } from '../document.ts';
import { featureById } from '../find-feature.ts';
import { setProperties } from './set-properties.ts';

/** Heights are kept to this many decimals of a metre: nobody knows a tree closer. */
const DIGITS = 1;

/**
 * Gives a thing the height that was found outside; what grows, as of the end of a year's season.
 * @throws BadInputError when it is not there, or the height is none.
 */
export function takeHeight(
  document: SiteDocument,
  id: FeatureId,
  found: { readonly heightM: number; readonly measuredYear: number },
): SiteDocument {
  const { kind } = featureById(document, id).properties;
  const heightM = Number(found.heightM.toFixed(DIGITS));
  const grows = kind === 'tree' || kind === 'belt' || kind === 'block';
  return setProperties(document, [id], grows ? { heightM, measuredYear: found.measuredYear } : { heightM });
}
