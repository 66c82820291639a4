import { measureOf } from '../../choose/measures.ts';
import { CHOOSING_YEARS, type ChoosingMeasure, type Matter } from '../../site/records/choosing.ts';

/** One name for a measure in a state. */
export const keyOfMatter = ({ measure, year }: Matter): string => `${measure} ${year ?? 'stands'}`;

/** Each measure in each state in which it has a figure. */
export const allMatters = (measures: readonly ChoosingMeasure[]): Matter[] =>
  measures.flatMap((measure): Matter[] =>
    measureOf(measure).byState
      ? [{ measure }, ...CHOOSING_YEARS.map((year) => ({ measure, year }))]
      : [{ measure }],
  );
