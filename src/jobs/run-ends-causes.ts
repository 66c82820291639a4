import { changeOver } from '../numeric/change.ts';
import { type Cause, ENDS_OF_CAUSE, type SceneEnd } from '../scene/ends.ts';
import type { AtEnds } from './run-ends.ts';

/** What one end makes of a quantity over an area, in the quantity's own unit. */
export interface EndChange {
  /** Null: the engine's own error, which has no scene of its own. */
  readonly end: SceneEnd | null;
  /** Mean over the area as expected and at this end. */
  readonly usual: number;
  readonly mean: number;
  /** In a tenth of the area the quantity changes by at least this much. */
  readonly widelyBy: number;
}

/** One thing that is not known, with what its two ends make of the quantity: first the end with less of it. */
export interface CauseChange {
  readonly cause: Cause | 'engine';
  readonly ends: readonly [EndChange, EndChange];
}

const size = ({ ends }: CauseChange): number =>
  Math.max(...ends.map(({ mean, usual }) => Math.abs(mean - usual)));

/**
 * What would change the mean of a quantity over an area most: the causes by the size of their larger end, the
 * engine's own error last whatever its size. Null where the area has no value.
 * @param valuesOf one value a cell of a result; @param mask 1 where a cell counts.
 * @param engineError the engine's stated error of this quantity: of a mean, and of 99 in 100 cells; null: it states none.
 */
export function causesBySize<Result>(
  at: AtEnds<Result>,
  causes: readonly Cause[],
  valuesOf: (result: Result) => ArrayLike<number>,
  mask: ArrayLike<number>,
  engineError: { readonly mean: number; readonly p99: number } | null,
): CauseChange[] | null {
  const usual = valuesOf(at.usual);
  const changeAt = (end: SceneEnd): EndChange | null => {
    const result = at.ends.get(end);
    if (result === undefined) throw new RangeError(`expected an answer at the end ${end}, found none`);
    const change = changeOver(usual, valuesOf(result), mask);
    return change && { end, usual: change.before, mean: change.after, widelyBy: change.widelyBy };
  };
  const found: CauseChange[] = [];
  for (const cause of causes) {
    const [one, other] = ENDS_OF_CAUSE[cause].map(changeAt);
    if (!one || !other) return null;
    found.push({ cause, ends: one.mean <= other.mean ? [one, other] : [other, one] });
  }
  found.sort((a, b) => size(b) - size(a));
  if (engineError && found.length > 0) {
    const mean = found[0].ends[0].usual;
    const side = (sign: number): EndChange => ({
      end: null,
      usual: mean,
      mean: mean + sign * engineError.mean,
      widelyBy: engineError.p99,
    });
    found.push({ cause: 'engine', ends: [side(-1), side(1)] });
  }
  return found;
}
