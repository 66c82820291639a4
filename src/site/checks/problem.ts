import type { FeatureId, SiteDocument, SiteFeature } from '../document.ts';

/** Something a person should look at. A problem makes figures wrong or missing; a note is worth knowing. */
export interface SiteProblem {
  readonly level: 'problem' | 'note';
  readonly featureId?: FeatureId;
  readonly sentence: string;
}

/** What a check may know beyond the document. What is not given is not checked. */
export interface CheckContext {
  /** Whether the catalogue, with the site's own species, knows a botanical name; what was probably meant; how tall it gets; whether it shoots again. */
  readonly knowsSpecies?: (name: string) => {
    readonly known: boolean;
    readonly suggestion?: string | null;
    readonly matureHeightM?: number | null;
    /** False: it dies of losing its whole crown. */
    readonly shootsAgain?: boolean;
  };
  /** Names of the files at hand, as the site writes them. */
  readonly filesAtHand?: readonly string[];
}

export type SiteCheck = (document: SiteDocument, context: CheckContext) => SiteProblem[];

/** `tree "t4" (N4)`: kind, id, and what the person calls it. */
export function featureWords({ id, properties: p }: SiteFeature): string {
  const own = (p.kind === 'tree' ? p.tag : undefined) ?? p.name;
  return `${p.kind} ${JSON.stringify(id)}${own ? ` (${own})` : ''}`;
}

/** True where two features can stand at the same time: neither belongs to a layout that the other does not. */
export const inOneLayout = (a: SiteFeature, b: SiteFeature): boolean =>
  !a.properties.layout || !b.properties.layout || a.properties.layout === b.properties.layout;

/** A list for a sentence, cut after five. */
export function listWords(words: readonly string[]): string {
  const shown = words.slice(0, 5);
  const more = words.length - shown.length;
  return more > 0 ? `${shown.join(', ')} and ${more} more` : shown.join(', ');
}
