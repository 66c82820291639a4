import type { LonLat } from '../../geo/frame.ts';
import type { FeatureId, FeatureOf, SiteDocument } from '../document.ts';
import { type RowSpacing, rowPlaces } from '../row-places.ts';
import { addFeatures } from './add-feature.ts';
import { freeTag } from './free-tag.ts';

/**
 * Plants trees along a line at a spacing, all alike; where `tree.tag` is given ("N" or "N4") they are numbered on from it.
 * @throws BadInputError for an impossible spacing or properties that are not allowed.
 */
export function plantRow(
  document: SiteDocument,
  line: readonly LonLat[],
  spacing: RowSpacing,
  tree: Omit<FeatureOf<'tree'>['properties'], 'kind'> = {},
): { document: SiteDocument; ids: FeatureId[] } {
  const tags = new Set(
    document.features.map((f) => (f.properties.kind === 'tree' ? f.properties.tag : undefined)),
  );
  const { tag: firstTag } = tree;
  const drawn = rowPlaces(line, spacing).places.map(([lon, lat]) => {
    const properties: FeatureOf<'tree'>['properties'] = { ...tree, kind: 'tree' };
    if (typeof firstTag === 'string') {
      // The given tag itself where it is free and numbered, otherwise the next after it.
      const tag = /\d$/.test(firstTag) && !tags.has(firstTag) ? firstTag : freeTag(firstTag, tags);
      tags.add(tag);
      properties.tag = tag;
    }
    return { properties, geometry: { type: 'Point' as const, coordinates: [lon, lat] as [number, number] } };
  });
  return addFeatures(document, drawn);
}
