import type { ProposedBelt } from '../belts/propose-result.ts';
import type { BeltWish } from '../belts/propose-types.ts';
import type { LonLat } from '../geo/frame.ts';
import type { SiteDocument } from '../site/document.ts';

/** What is asked of new belts, and what the person has said of those that were proposed. */
export interface Proposing {
  /** Without a field: the one that is taken, or the first. */
  readonly wish: Omit<BeltWish, 'fieldId'> & { readonly fieldId: BeltWish['fieldId'] | null };
  /** Lines that were refused in this sitting: nothing is proposed there again. */
  readonly refused: readonly (readonly LonLat[])[];
  /** Which of the ways is looked at, and the belt of it that is pointed out on the map. */
  readonly way: number;
  readonly pointedLetter: string | null;
  /** Belts of the ways that were accepted or refused. */
  readonly accepted: readonly ProposedBelt[];
  readonly declined: readonly ProposedBelt[];
  /** What was drawn when they were proposed, with what was accepted since. */
  readonly features: SiteDocument['features'] | null;
}

export const NOTHING_SAID = {
  way: 0,
  pointedLetter: null,
  accepted: [],
  declined: [],
  features: null,
} as const;

export const FIRST_PROPOSING: Proposing = {
  wish: { fieldId: null, cutShare: 0.3, overShare: 0.7, year: 12, season: 'growing' },
  refused: [],
  ...NOTHING_SAID,
};
