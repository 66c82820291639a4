import type { PaceBand } from '../growth/pace-band.ts';
import type { GridSpec } from '../numeric/grid.ts';
import type { FeatureId } from '../site/document.ts';
import type { YearFigures, YearMaps } from './year-figures.ts';

/** The trees of one species that bear a crop. */
export interface SpeciesCrop {
  readonly speciesName: string;
  readonly trees: number;
  /** First year after the base year in which one of them bears; null: in none of those followed. */
  readonly firstYear: PaceBand<number | null>;
}

/** When the trees of a layout bear. */
export interface CropLook {
  readonly trees: number;
  /** How many bear, by year from the base year on. */
  readonly bearing: PaceBand<readonly number[]>;
  /** The soonest first. */
  readonly species: readonly SpeciesCrop[];
}

/** Figures of a field as things grow slowly and fast, at some years. Shares 0 to 1. */
export interface YearsBand {
  readonly years: readonly number[];
  readonly slow: readonly YearsBandFigures[];
  readonly fast: readonly YearsBandFigures[];
}
export type YearsBandFigures = Pick<YearFigures, 'shelteredShare' | 'canopyShare'>;

/** One field through the years. */
export interface YearsLook {
  readonly fieldId: FeatureId;
  readonly fieldName: string;
  /** Rising: some on coarse cells first, then every fifth, at last all. */
  readonly years: readonly number[];
  /** In their order. */
  readonly figures: readonly YearFigures[];
  readonly grid: GridSpec;
  /** Cell by cell, by year; none of coarse cells. */
  readonly maps: ReadonlyMap<number, YearMaps>;
  /** Null until it is counted, and where no tree bears a crop. */
  readonly crops: CropLook | null;
  /** Null until it is worked out. */
  readonly band: YearsBand | null;
}
