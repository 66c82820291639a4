import type { PaceBand } from '../growth/pace-band.ts';
import type { Costs } from './costs.ts';
import type { CropYears } from './crop-years.ts';
import type { Holdings, LayoutName } from './holdings.ts';
import type { WhatDiffers } from './what-differs.ts';

/** Share of the field that must be in shelter to count as sheltered, where nothing else is asked. Our convention. */
export const USUAL_SHELTERED_SHARE = 0.5;

/** Light and shelter of one layout in one year, over one field, at usual growth, growing season. */
export interface LayoutFigures {
  /** Mean share by which the wind is cut. */
  readonly meanCut: number;
  /** Share of the field on which it is cut by 30 % or more. */
  readonly shelteredShare: number;
  readonly patches: number;
  readonly patchesWithEnoughLight: number;
  /** Mean share of open light over the ground of the patches; NaN without any. */
  readonly meanLightShare: number;
}

/** How one layout comes along. Years are after the base year. */
export interface LayoutYears {
  readonly years: readonly number[];
  /** Share of the field on which the wind is cut by 30 % or more, a value a year. */
  readonly shelteredShare: PaceBand<readonly number[]>;
  /** The first year in which that is at least the wanted share; null: not within the years looked at. */
  readonly shelteredFrom: PaceBand<number | null>;
  /** The year by which half of its own trees are planted; null: none are. */
  readonly treesPlantedIn: number | null;
  /** Mean share by which the field's wind is cut at the end of that year; null: no trees are planted. */
  readonly cutAtPlanting: PaceBand<number> | null;
  readonly crops: CropYears | null;
}

export interface LayoutSide {
  readonly layout: LayoutName;
  readonly holdings: Holdings;
  readonly costs: Costs;
  readonly figures: LayoutFigures;
  readonly years: LayoutYears;
}

/** Two layouts of one site beside each other. */
export interface LayoutComparison {
  readonly baseYear: number;
  readonly fieldName: string;
  /** Of the figures, after the base year. */
  readonly year: number;
  readonly wantedShare: number;
  /** As it stands beside a sum; empty: not said. */
  readonly currency: string;
  readonly sides: readonly [LayoutSide, LayoutSide];
  readonly differs: WhatDiffers;
}

/** The last year that is looked at. */
export const lastYearOf = ({ years }: LayoutYears): number => years[years.length - 1];
