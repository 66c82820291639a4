import { BadInputError } from '../../units/bad-input.ts';
import type { FeatureId, SiteDocument } from '../document.ts';
import type { CareRecord } from '../records/care.ts';
import { isWoody } from '../woody.ts';
import { changeFeatures } from './change-features.ts';

/**
 * Changes the care of some plants; an empty list goes from the file.
 * @throws BadInputError for an id that is not there or no plant, or when the outcome is not sound.
 */
export const changeCareOf = (
  document: SiteDocument,
  ids: readonly FeatureId[],
  change: (care: readonly CareRecord[]) => CareRecord[],
): SiteDocument =>
  changeFeatures(document, ids, (feature) => {
    if (!isWoody(feature))
      throw new BadInputError(
        `${feature.properties.kind} ${JSON.stringify(feature.id)}: care is for a tree, a belt or a block.`,
      );
    const { care = [], ...properties } = feature.properties;
    const changed = change(care);
    return {
      ...feature,
      properties: changed.length > 0 ? { ...properties, care: changed } : properties,
    } as typeof feature;
  });
