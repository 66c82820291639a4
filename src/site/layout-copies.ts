import type { SiteDocument, SiteFeature } from './document.ts';
import { freeId, takenIds } from './feature-ids.ts';

/** Copies of features for another layout: each with an id of its own, and the same tag. */
export function copiesForLayout(
  document: SiteDocument,
  features: readonly SiteFeature[],
  layout: string,
  taken: Set<string> = takenIds(document),
): SiteFeature[] {
  return features.map((feature) => {
    const id = freeId(feature.properties.kind, taken);
    taken.add(id);
    return { ...inLayout(feature, layout), id } as SiteFeature;
  });
}

/** The same feature as a part of one layout. */
export const inLayout = (feature: SiteFeature, layout: string): SiteFeature =>
  ({ ...feature, properties: { ...feature.properties, layout } }) as SiteFeature;
