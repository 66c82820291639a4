import type { CareEvent } from '../growth/care.ts';
import type { FeatureId } from '../site/document.ts';

/** What may be done to a plant in one winter to bring light back, from the gentlest to the end of it. */
export const CUT_KINDS = ['thin', 'raiseCrown', 'pollard', 'coppice', 'fell'] as const;
export type CutKind = (typeof CUT_KINDS)[number];

/** One thing that may be done to one plant. */
export interface CutOption {
  readonly kind: CutKind;
  /** As it is written into the site. */
  readonly care: CareEvent;
  /** How often somebody goes out for it within the years looked at. */
  readonly works: number;
  /** Years of a full crop that the plant does not bear for it; 0 for what is not there for a crop. */
  readonly cropYearsLost: number;
  /** Share of the crown that is gone in the first season. */
  readonly takenShare: number;
}

/** A plant that may be cut, with all that may be done to it. */
export interface CutPlant {
  readonly id: FeatureId;
  /** "Walnut N2". */
  readonly label: string;
  readonly kind: 'tree' | 'belt' | 'block';
  /** Height in the first season, uncut, m. */
  readonly heightM: number;
  readonly bearsCrop: boolean;
  readonly options: readonly CutOption[];
}

/** What a set of cuts shall be least of. `standing`: nothing is felled. */
export const CUT_AIMS = ['fewest', 'crop', 'shelter', 'standing'] as const;
export type CutAim = (typeof CUT_AIMS)[number];

/** What is asked. */
export interface CutWish {
  /** Years after the base year: the season that follows the winter of the work. */
  readonly year: number;
  /** Plants that a person would not have cut. */
  readonly refused: readonly FeatureId[];
}

/** The light is to last for so many years after the first season. */
export const YEARS_TO_KEEP = 5;

/** Seasons that are looked at, years after the base year. */
export const seasonsOf = ({ year }: Pick<CutWish, 'year'>): number[] =>
  Array.from({ length: YEARS_TO_KEEP + 1 }, (_, later) => year + later);

/** Shares of the wind are told apart this finely when sets of cuts are compared: finer is not known. Our choice. */
export const SHELTER_STEP = 0.002;
