import type { SiteDocument, SiteFeature } from '../document.ts';
import { freeId, takenIds } from '../feature-ids.ts';
import { knownLayoutName } from '../layout-names.ts';
import { addLayout } from './add-layout.ts';

/** Starts a layout as a copy of another: each of its own features is copied, with a new id and the same tag. */
export function copyLayout(document: SiteDocument, from: string, to: string): SiteDocument {
  knownLayoutName(document, from);
  const withLayout = addLayout(document, to);
  const layout = withLayout.site.layouts?.at(-1)?.name;
  const taken = takenIds(document);
  const copies = document.features
    .filter((feature) => feature.properties.layout === from)
    .map((feature) => {
      const id = freeId(feature.properties.kind, taken);
      taken.add(id);
      return { ...feature, id, properties: { ...feature.properties, layout } } as SiteFeature;
    });
  return { ...withLayout, features: [...document.features, ...copies] };
}
