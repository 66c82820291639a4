import type { SiteDocument } from '../site/document.ts';
import { parseSite } from '../site/parse-site.ts';
import { serialiseSite } from '../site/serialise-site.ts';

/** A site that was open before on this device, and the text it is kept as. */
export interface EarlierSite {
  readonly document: SiteDocument;
  readonly text: string;
}

/** How many sites that were open before are kept on the device beside the open one. */
const MOST_EARLIER = 5;

/**
 * The earlier sites, the latest first, after `opened` has taken the place of `left`: nobody loses a site by opening
 * another. A site stands once however often it was looked at; an empty one is no loss.
 */
export function afterOpening(
  earlier: readonly EarlierSite[],
  left: SiteDocument,
  opened: SiteDocument,
): readonly EarlierSite[] {
  const leaving = left.features.length > 0 ? [{ document: left, text: serialiseSite(left) }] : [];
  const seen = new Set([serialiseSite(opened)]);
  return [...leaving, ...earlier]
    .filter(({ text }) => {
      if (seen.has(text)) return false;
      seen.add(text);
      return true;
    })
    .slice(0, MOST_EARLIER);
}

/** Earlier sites read back from their texts; one that can no longer be read is left out. */
export function readEarlier(texts: readonly string[]): EarlierSite[] {
  return texts.flatMap((text) => {
    try {
      return { document: parseSite(text, 'A site kept on this device').document, text };
    } catch {
      return [];
    }
  });
}
