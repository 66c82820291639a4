import type { Kind } from './document.ts';

/** An id nobody has yet: the kind and the lowest free number, so that the same file gets the same ids every time. */
export function freeId(kind: Kind, taken: ReadonlySet<string>): string {
  let n = 1;
  while (taken.has(`${kind}-${n}`)) n++;
  return `${kind}-${n}`;
}

/** The ids of everything in a document, as texts. */
export const takenIds = (document: {
  readonly features: readonly { readonly id?: unknown }[];
  readonly otherFeatures?: readonly { readonly id?: unknown }[];
}): Set<string> =>
  new Set(
    [...document.features, ...(document.otherFeatures ?? [])]
      .filter((feature) => feature.id !== undefined)
      .map((feature) => String(feature.id)),
  );
