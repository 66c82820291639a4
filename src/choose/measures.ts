import type { Matter } from '../site/records/choosing.ts';
import type { FieldFigures, FieldStateKey } from './choose-types.ts';
import { MEASURES } from './measure-list.ts';
import type { Measure, MeasureKey } from './measure-types.ts';

const BY_KEY = new Map<string, Measure>(MEASURES.map((measure) => [measure.key, measure]));

/** @throws Error for a key that no measure has, which the validator of the site file lets nobody write. */
export function measureOf(key: MeasureKey): Measure {
  const measure = BY_KEY.get(key);
  if (!measure) throw new Error(`There is no measure ${JSON.stringify(key)}.`);
  return measure;
}

/** The state in which a matter is looked at. */
export const stateOf = ({ year }: Matter): FieldStateKey => year ?? 'stands';

/** A field's figure for a matter; null: not known; Infinity: never. */
export const matterValue = (field: FieldFigures, matter: Matter): number | null =>
  measureOf(matter.measure).of(field, stateOf(matter));
