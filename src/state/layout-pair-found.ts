import type { LayoutFigures, LayoutYears } from '../layouts/comparison.ts';
import { USUAL_SHELTERED_SHARE } from '../layouts/comparison.ts';
import type { LayoutAnswers } from '../layouts/comparison-of.ts';
import type { LayoutName } from '../layouts/holdings.ts';
import type { LightResult } from '../light/light-types.ts';
import type { FeatureId } from '../site/document.ts';
import type { ShelterResult } from '../wind/shelter-types.ts';

export type LayoutPair = readonly [LayoutName, LayoutName];

/** Which two layouts are looked at beside each other, and how. */
export interface Comparing {
  /** Null: the first two of the site. */
  readonly layouts: LayoutPair | null;
  /** Null: the field on which most of them stands. */
  readonly fieldId: FeatureId | null;
  /** Share of the field that is to be in shelter. */
  readonly wantedShare: number;
  readonly picture: 'wind-cut' | 'light-share';
}

export const FIRST_COMPARING: Comparing = {
  layouts: null,
  fieldId: null,
  wantedShare: USUAL_SHELTERED_SHARE,
  picture: 'wind-cut',
};

/** The maps of both, in one year. */
export interface WindMaps {
  readonly picture: 'wind-cut';
  readonly year: number;
  readonly results: readonly [ShelterResult, ShelterResult];
}
export interface LightMaps {
  readonly picture: 'light-share';
  readonly year: number;
  readonly results: readonly [LightResult, LightResult];
}
export type PairMaps = WindMaps | LightMaps;

export interface LayoutPairFound {
  readonly layouts: LayoutPair;
  readonly fieldId: FeatureId;
  readonly wantedShare: number;
  readonly maps: PairMaps;
  /** Null until they are worked out; those of an earlier year stay until then. */
  readonly figures: { readonly year: number; readonly of: readonly [LayoutFigures, LayoutFigures] } | null;
  readonly years: readonly [LayoutYears, LayoutYears] | null;
}

/** What the engines answered of both; null while some of it is not there. */
export function answersOf({
  figures,
  years,
}: LayoutPairFound): readonly [LayoutAnswers, LayoutAnswers] | null {
  if (!figures || !years) return null;
  const of = (side: 0 | 1): LayoutAnswers => ({ figures: figures.of[side], years: years[side] });
  return [of(0), of(1)];
}
