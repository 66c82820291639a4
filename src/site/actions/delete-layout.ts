import type { SiteDocument } from '../document.ts';
import { knownLayoutName } from '../layout-names.ts';
import { setSite } from './set-site.ts';

/** Deletes a layout and the features that belong to it alone; what is common to all stays. */
export function deleteLayout(document: SiteDocument, name: string): SiteDocument {
  knownLayoutName(document, name);
  const without = setSite(document, {
    layouts: document.site.layouts?.filter((layout) => layout.name !== name),
  });
  return { ...without, features: document.features.filter((feature) => feature.properties.layout !== name) };
}
