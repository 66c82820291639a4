import type { SiteDocument } from '../document.ts';
import { copiesForLayout } from '../layout-copies.ts';
import { knownLayoutName } from '../layout-names.ts';
import { addLayout } from './add-layout.ts';

/** Starts a layout as a copy of another: each of its own features is copied, with a new id and the same tag. */
export function copyLayout(document: SiteDocument, from: string, to: string): SiteDocument {
  knownLayoutName(document, from);
  const withLayout = addLayout(document, to);
  // The name as it is kept: without the blanks around it.
  const layout = withLayout.site.layouts?.at(-1)?.name ?? to;
  const own = document.features.filter((feature) => feature.properties.layout === from);
  return { ...withLayout, features: [...document.features, ...copiesForLayout(document, own, layout)] };
}
