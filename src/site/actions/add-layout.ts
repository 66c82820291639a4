import { BadInputError } from '../../units/bad-input.ts';
import type { SiteDocument } from '../document.ts';
import { setSite } from './set-site.ts';

/** Adds an alternative design with nothing of its own yet. */
export const addLayout = (document: SiteDocument, name: string): SiteDocument =>
  setSite(document, { layouts: [...(document.site.layouts ?? []), { name: newLayoutName(document, name) }] });

/** @throws BadInputError for a name that is empty or in use. */
export function newLayoutName(document: SiteDocument, name: string): string {
  const trimmed = name.trim();
  if (trimmed === '') throw new BadInputError('Layout: the name is empty; expected a name.');
  if (document.site.layouts?.some((layout) => layout.name === trimmed))
    throw new BadInputError(
      `Layout: there is one named ${JSON.stringify(trimmed)} already; expected another name.`,
    );
  return trimmed;
}

/** @throws BadInputError when there is no such layout. */
export function knownLayoutName(document: SiteDocument, name: string): string {
  const names = (document.site.layouts ?? []).map((layout) => layout.name);
  if (!names.includes(name))
    throw new BadInputError(
      `Layout: there is none named ${JSON.stringify(name)}; expected ${names.length > 0 ? names.map((n) => JSON.stringify(n)).join(', ') : 'no layout, as the site has none'}.`,
    );
  return name;
}
