import type { FeatureId, SiteDocument, SiteFeature } from '../document.ts';
import { changeFeatures } from './change-features.ts';

/**
 * Sets properties of one or several features; a value of undefined removes the property. The kind stays.
 * @throws BadInputError when a value is not allowed; nothing is changed then.
 */
export const setProperties = (
  document: SiteDocument,
  ids: readonly FeatureId[],
  values: Readonly<Record<string, unknown>>,
): SiteDocument =>
  changeFeatures(document, ids, (feature) => {
    const properties: Record<string, unknown> = {
      ...feature.properties,
      ...values,
      kind: feature.properties.kind,
    };
    for (const key of Object.keys(values)) if (properties[key] === undefined) delete properties[key];
    return { ...feature, properties } as SiteFeature;
  });
