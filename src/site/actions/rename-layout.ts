import type { SiteDocument, SiteFeature } from '../document.ts';
import { knownLayoutName, newLayoutName } from '../layout-names.ts';
import { setSite } from './set-site.ts';

/** Renames a layout, in the site record and in every feature that belongs to it. */
export function renameLayout(document: SiteDocument, from: string, to: string): SiteDocument {
  knownLayoutName(document, from);
  if (to.trim() === from) return document;
  const name = newLayoutName(document, to);
  const renamed = setSite(document, {
    layouts: document.site.layouts?.map((layout) => (layout.name === from ? { ...layout, name } : layout)),
  });
  const features = document.features.map((feature) =>
    feature.properties.layout === from
      ? ({ ...feature, properties: { ...feature.properties, layout: name } } as SiteFeature)
      : feature,
  );
  return { ...renamed, features };
}
