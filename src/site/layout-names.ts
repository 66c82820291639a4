import { BadInputError } from '../units/bad-input.ts';
import type { SiteDocument } from './document.ts';

/** Names of the layouts: those of the site record, then any that only features speak of. */
export function layoutNames(document: SiteDocument): string[] {
  const names = new Set((document.site.layouts ?? []).map((layout) => layout.name));
  for (const feature of document.features)
    if (feature.properties.layout) names.add(feature.properties.layout);
  return [...names];
}

/** @throws BadInputError for a name that is empty or in use. */
export function newLayoutName(document: SiteDocument, name: string): string {
  const trimmed = name.trim();
  if (trimmed === '') throw new BadInputError('Layout: the name is empty; expected a name.');
  if (layoutNames(document).includes(trimmed))
    throw new BadInputError(
      `Layout: there is one named ${JSON.stringify(trimmed)} already; expected another name.`,
    );
  return trimmed;
}

/** @throws BadInputError when there is no such layout; the sentence lists those there are. */
export function knownLayoutName(document: SiteDocument, name: string): string {
  const names = layoutNames(document);
  if (names.includes(name)) return name;
  const there =
    names.length > 0
      ? `one of ${names.map((n) => JSON.stringify(n)).join(', ')}`
      : 'none, as the site has no layouts';
  throw new BadInputError(`Layout: there is none named ${JSON.stringify(name)}; expected ${there}.`);
}

/**
 * The layout that is looked at after an edit: the same one, also under another name; null where it is gone. A layout
 * was renamed where one name took the place of one other.
 */
export function layoutAfter(before: SiteDocument, after: SiteDocument, layout: string | null): string | null {
  if (layout === null) return null;
  const now = layoutNames(after);
  if (now.includes(layout)) return layout;
  const then = layoutNames(before);
  const added = now.filter((name) => !then.includes(name));
  const gone = then.filter((name) => !now.includes(name));
  return added.length === 1 && gone.length === 1 ? added[0] : null;
}
