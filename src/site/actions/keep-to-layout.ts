import type { FeatureId, SiteDocument, SiteFeature } from '../document.ts';
import { takenIds } from '../feature-ids.ts';
import { featureById } from '../find-feature.ts';
import { copiesForLayout, inLayout } from '../layout-copies.ts';
import { knownLayoutName, layoutNames } from '../layout-names.ts';

/**
 * Parts something common to all layouts, so that it can be changed in one of them: it becomes that layout's own, and
 * every other layout gets its own copy of it as it is. Nothing moves in any layout; what is common loses it.
 * @throws BadInputError when there is no such feature or layout.
 */
export function keepToLayout(document: SiteDocument, id: FeatureId, layout: string): SiteDocument {
  const feature = featureById(document, id);
  knownLayoutName(document, layout);
  if (feature.properties.layout) return document;
  const taken = takenIds(document);
  const copies = layoutNames(document)
    .filter((name) => name !== layout)
    .flatMap((name) => copiesForLayout(document, [feature], name, taken));
  return {
    ...document,
    features: [
      ...document.features.map(
        (each): SiteFeature => (each.id === feature.id ? inLayout(each, layout) : each),
      ),
      ...copies,
    ],
  };
}
