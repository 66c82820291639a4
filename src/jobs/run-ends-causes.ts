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
  /** In a tenth of the area the quantity changes by at least this much; by the engine's stated error: in a hundredth. */
  readonly widelyBy: number;
}

/** One thing that is not known, with what its two ends make of the quantity: first the end with less of it. */
export interface CauseChange {
  readonly cause: Cause | 'engine';
  readonly ends: readonly [EndChange, EndChange];
}

/** An engine's error of a quantity, in its unit: of the mean, and in the cells that are furthest off. */
export interface EngineError {
  readonly mean: number;
  readonly p99: number;
}

const size = ({ ends }: CauseChange): number =>
  Math.max(...ends.map(({ mean, usual }) => Math.abs(mean - usual)));

/**
 * What would change the mean of a quantity over an area most: the causes by the size of their larger end. The engine's
 * own error comes last unless it is larger than a cause. Null where the area has no value.
 * @param valuesOf one value a cell of a result; @param mask 1 where a cell counts.
 * @param stated the error that the engine states; null: it is what its finer steps make of the expected answer.
 */
export function causesBySize<Result>(
  at: AtEnds<Result>,
  causes: readonly Cause[],
  valuesOf: (result: Result) => ArrayLike<number>,
  mask: ArrayLike<number>,
  stated: EngineError | null,
): CauseChange[] | null {
  const usual = valuesOf(at.usual);
  const changeTo = (result: Result) => changeOver(usual, valuesOf(result), mask);
  const expected = changeTo(at.usual)?.before;
  if (expected === undefined) return null;
  const found = causes.map((cause): CauseChange => {
    const [one, other] = ENDS_OF_CAUSE[cause].map((end): EndChange => {
      const result = at.ends.get(end);
      const change = result && changeTo(result);
      if (!change)
        throw new RangeError(`expected an answer at the end ${end} with the same cells, found none`);
      return { end, usual: change.before, mean: change.after, widelyBy: change.widelyBy };
    });
    return { cause, ends: one.mean <= other.mean ? [one, other] : [other, one] };
  });
  const error = stated ?? errorOfSteps(at, changeTo);
  if (error) {
    const side = (sign: number): EndChange => ({
      end: null,
      usual: expected,
      mean: expected + sign * error.mean,
      widelyBy: error.p99,
    });
    found.push({ cause: 'engine', ends: [side(-1), side(1)] });
  }
  // A stable sort: where nothing is larger, the engine stays last.
  return found.sort((a, b) => size(b) - size(a));
}

function errorOfSteps<Result>(
  { finer }: AtEnds<Result>,
  changeTo: (result: Result) => ReturnType<typeof changeOver>,
): EngineError | null {
  const change = finer && changeTo(finer);
  return change && { mean: Math.abs(change.after - change.before), p99: change.widelyBy };
}
