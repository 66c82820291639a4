import type { LonLat } from '../geo/frame.ts';
import type { Drawn } from '../site/actions/add-feature.ts';
import type { BeltAim } from './propose-job.ts';
import type { BeltOption, BeltWish } from './propose-types.ts';

/** One belt of a proposal, ready to be planted. */
export interface ProposedBelt {
  /** On the map and in the list. */
  readonly letter: string;
  readonly name: string;
  readonly drawn: Drawn;
  readonly line: readonly LonLat[];
  readonly option: BeltOption;
  /** At the end of the wished year, and from slow to fast growth. */
  readonly heightM: number;
  readonly heightBandM: readonly [number, number];
  readonly landM2: number;
}

/** A figure at slow, usual and fast growth. */
export interface GrowthBand<Value> {
  readonly slow: Value;
  readonly usual: Value;
  readonly fast: Value;
}

/** What several belts together come to, by the engines. */
export interface BeltAlternative {
  /** What it is best at; the last two where the wish is met earlier or not at all. */
  readonly aims: readonly (BeltAim | 'soonest' | 'most')[];
  readonly belts: readonly ProposedBelt[];
  /** Ground under the belts, and ground beside them that falls below half of the open light, m2. */
  readonly landM2: number;
  readonly darkM2: number;
  /** Share of the field on which the wind is cut enough in the wished year. */
  readonly overShare: GrowthBand<number>;
  /** By how much the wind is cut in the field's mean. */
  readonly meanCut: number;
  /** First year from which it is enough; null: not within twenty years after the wished one. */
  readonly fromYear: GrowthBand<number | null>;
  /** Mean share of open light on the field over the growing season, without and with them. */
  readonly light: { readonly without: number; readonly with: number };
  readonly enough: boolean;
}

export interface BeltProposals {
  readonly wish: BeltWish;
  readonly fieldName: string;
  readonly fieldAreaM2: number;
  /** With nothing more planted, in the wished year. */
  readonly overShareNow: number;
  /** Places and species that were tried. */
  readonly tried: number;
  readonly alternatives: readonly BeltAlternative[];
  /** Where it cannot be reached: what would help. */
  readonly help: {
    /** First of the later years tried in which it can be. */
    readonly year: number | null;
    /** The cut that the asked share of the field can have in the wished year. */
    readonly cutShare: number;
  } | null;
}
