import type { SiteDocument } from '../document.ts';
import { newLayoutName } from '../layout-names.ts';
import { setSite } from './set-site.ts';

/** Adds an alternative design with nothing of its own yet. */
export const addLayout = (document: SiteDocument, name: string): SiteDocument =>
  setSite(document, { layouts: [...(document.site.layouts ?? []), { name: newLayoutName(document, name) }] });
