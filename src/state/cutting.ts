import type { ProposedCut } from '../cuts/cut-result.ts';
import type { FeatureId, SiteDocument } from '../site/document.ts';

/** What the person has said of the cuts that were proposed. */
export interface Cutting {
  /** Plants that were refused in this sitting: they are not proposed again. */
  readonly refused: readonly FeatureId[];
  /** Which of the ways is looked at, and the cut of it that is pointed out on the map. */
  readonly way: number;
  readonly pointedLetter: string | null;
  readonly declined: readonly ProposedCut[];
  /** What was drawn when they were proposed, with what was accepted since. */
  readonly features: SiteDocument['features'] | null;
}

export const NO_CUT_SAID = {
  way: 0,
  pointedLetter: null,
  declined: [],
  features: null,
} as const;
export const FIRST_CUTTING: Cutting = { refused: [], ...NO_CUT_SAID };
