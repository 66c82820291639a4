import { commonPlanned } from '../common-planned.ts';
import type { SiteDocument } from '../document.ts';
import { inLayout } from '../layout-copies.ts';
import { addLayout } from './add-layout.ts';
import { copyLayout } from './copy-layout.ts';

/**
 * Two layouts out of what is planned and common: it becomes the first, and the second starts as a copy of it, so that
 * both can be changed apart. What stands, the fields, the ways and the patches stay common.
 * @throws BadInputError for a name that is empty, in use, or both times the same.
 */
export function startLayouts(document: SiteDocument, first: string, second: string): SiteDocument {
  const planned = new Set(commonPlanned(document).map(({ id }) => id));
  const withFirst = addLayout(document, first);
  const layout = withFirst.site.layouts?.at(-1)?.name ?? first;
  const moved = {
    ...withFirst,
    features: withFirst.features.map((feature) =>
      planned.has(feature.id) ? inLayout(feature, layout) : feature,
    ),
  };
  return copyLayout(moved, layout, second);
}
