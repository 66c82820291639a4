import type { ChoosingMeasure } from '../site/records/choosing.ts';
import type { FieldFigures, FieldStateKey } from './choose-types.ts';

/** What fields are compared by; those of `CHOOSING_MEASURES` can be asked for and ranked. */
export type MeasureKey =
  | ChoosingMeasure
  | 'aspectDeg'
  | 'horizonSumDeg'
  | 'deepestColdM'
  | 'drainsThroughM2'
  | 'bothShare';
/** Shares 0 to 1, hours a year or a season, degrees, years after the base year, `index` without a unit. */
export type MeasureUnit = 'm2' | 'm' | 'share' | 'hours' | 'deg' | 'bearing' | 'year' | 'index';
export const MEASURE_GROUPS = ['Ground', 'Wind', 'Light', 'Light and shelter', 'Cold air', 'Belts'] as const;

export interface Measure {
  readonly key: MeasureKey;
  readonly group: (typeof MEASURE_GROUPS)[number];
  readonly what: string;
  readonly unit: MeasureUnit;
  /** Which is better; null: neither. */
  readonly better: 'more' | 'less' | null;
  /** Fields nearer to each other than this are alike. Our choice. */
  readonly alikeWithin: number;
  /** Whether it has a value for each state of the field. */
  readonly byState: boolean;
  /** Null: not known; Infinity: never. */
  readonly of: (field: FieldFigures, state: FieldStateKey) => number | null;
}
