import type { FeatureId, SiteDocument, SiteFeature } from '../document.ts';
import { changeFeatures } from './change-features.ts';

/**
 * Gives a feature another geometry; foreign members of the old one are kept.
 * @throws BadInputError when its kind cannot have that shape, or the shape is not sound.
 */
export const reshapeFeature = (
  document: SiteDocument,
  id: FeatureId,
  geometry: SiteFeature['geometry'],
): SiteDocument =>
  changeFeatures(
    document,
    [id],
    (feature) => ({ ...feature, geometry: { ...feature.geometry, ...geometry } }) as SiteFeature,
  );
