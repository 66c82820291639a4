import type { Matter } from '../site/records/choosing.ts';
import type { ChooseCause, ChooseEnd } from './choose-ends.ts';
import { ENDS_OF_CHOOSE_CAUSE } from './choose-ends.ts';
import type { FieldFigures } from './choose-types.ts';
import type { MeasureUnit } from './measure-types.ts';
import { matterValue, measureOf } from './measures.ts';

/** What a field comes to in each matter, in their order; NaN: not known. */
export interface FieldValues {
  readonly usual: readonly number[];
  /** What each end adds to it; an end that is not there adds nothing. */
  readonly departures: ReadonlyMap<ChooseEnd, readonly number[]>;
}

/** A field that is not in shelter within the years that are looked at counts as in shelter from the next on. */
const NEVER_YEAR = 41;
const rankable = (value: number | null): number =>
  value === null ? Number.NaN : Math.min(value, value === Number.POSITIVE_INFINITY ? NEVER_YEAR : value);

/** @param atEnds the same field on coarse cells, as expected (null) and at each end. */
export function fieldValues(
  field: FieldFigures,
  atEnds: ReadonlyMap<ChooseEnd | null, FieldFigures> | null,
  matters: readonly Matter[],
): FieldValues {
  const of = (figures: FieldFigures) => matters.map((matter) => rankable(matterValue(figures, matter)));
  const expected = atEnds?.get(null);
  const departures = new Map<ChooseEnd, readonly number[]>();
  if (atEnds && expected) {
    const coarse = of(expected);
    for (const [end, figures] of atEnds)
      if (end !== null)
        departures.set(
          end,
          of(figures).map((value, m) => (Number.isNaN(value - coarse[m]) ? 0 : value - coarse[m])),
        );
  }
  return { usual: of(field), departures };
}

/** How far each cause is from what is expected: -1 at its first end, 1 at its second. */
export type Departures = Readonly<Partial<Record<ChooseCause, number>>>;

const LIMITS: Readonly<Record<MeasureUnit, readonly [number, number]>> = {
  m2: [0, Infinity],
  m: [0, Infinity],
  share: [-1, 1],
  hours: [0, Infinity],
  deg: [0, 90],
  bearing: [0, 360],
  year: [0, NEVER_YEAR],
  index: [-Infinity, Infinity],
};

/** What a field comes to where several causes depart at once: what each does alone is added up (our simplification). */
export function valuesAt(
  { usual, departures }: FieldValues,
  matters: readonly Matter[],
  away: Departures,
): number[] {
  return usual.map((value, m) => {
    let sum = value;
    for (const [cause, far] of Object.entries(away) as [ChooseCause, number][]) {
      const end = ENDS_OF_CHOOSE_CAUSE[cause][far < 0 ? 0 : 1];
      sum += Math.abs(far) * (departures.get(end)?.[m] ?? 0);
    }
    const [least, most] = LIMITS[measureOf(matters[m].measure).unit];
    return Math.min(most, Math.max(least, sum));
  });
}

/**
 * Which fields come first: each matter is scaled from the worst of them to the best, and weighed. A difference below
 * what is worth telling is not stretched to the whole scale. What is not known counts as the worst.
 * @param values by field, then by matter. @param weights by matter. @returns indices, several where they are level.
 */
export function firstFields(
  values: readonly (readonly number[])[],
  matters: readonly Matter[],
  weights: readonly number[],
): number[] {
  const sums = values.map(() => 0);
  for (const [m, matter] of matters.entries()) {
    const { better, alikeWithin } = measureOf(matter.measure);
    if (better === null) continue;
    const sign = better === 'more' ? 1 : -1;
    const column = values.map((field) => sign * field[m]);
    const known = column.filter((value) => !Number.isNaN(value));
    if (known.length === 0) continue;
    const worst = Math.min(...known);
    const span = Math.max(alikeWithin, Math.max(...known) - worst);
    for (const [k, value] of column.entries())
      if (!Number.isNaN(value)) sums[k] += (weights[m] * (value - worst)) / span;
  }
  const best = Math.max(...sums);
  return sums.flatMap((sum, k) => (best - sum <= LEVEL ? [k] : []));
}

/** Sums nearer to each other are level: rounding, no difference. */
const LEVEL = 1e-9;
