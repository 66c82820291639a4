import { BadInputError } from '../../units/bad-input.ts';
import type { FeatureId, SiteDocument, SiteFeature } from '../document.ts';
import { featureById } from '../find-feature.ts';
import { changeFeatures } from './change-features.ts';

/**
 * Takes one field and leaves the others; null leaves them all.
 * @throws BadInputError when the id is not that of a field.
 */
export function takeField(document: SiteDocument, id: FeatureId | null): SiteDocument {
  if (id !== null) {
    const { kind } = featureById(document, id).properties;
    if (kind !== 'field')
      throw new BadInputError(`Feature ${JSON.stringify(id)} is a ${kind}; expected a field to be taken.`);
  }
  const changed = document.features.filter(
    ({ id: other, properties: p }) => p.kind === 'field' && (p.taken ?? false) !== (other === id),
  );
  return changeFeatures(
    document,
    changed.map((feature) => feature.id),
    (feature) => {
      const properties: Record<string, unknown> = { ...feature.properties, taken: true };
      if (feature.id !== id) delete properties.taken;
      return { ...feature, properties } as SiteFeature;
    },
  );
}
