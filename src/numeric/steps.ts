/**
 * A kernel that pauses: it yields its progress (0 to 1) at least every few tens of milliseconds, so that the thread
 * that drives it can report and cancel, and returns its result.
 */
export type Steps<Result> = Generator<number, Result, void>;

/** Runs a kernel to its end in one go. */
export function runToEnd<Result>(steps: Steps<Result>): Result {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** The same steps as a part of a longer way: what they yield lies from `from` to `from + share`. */
export function* within<Result>(steps: Steps<Result>, from: number, share: number): Steps<Result> {
  let step = steps.next();
  for (; !step.done; step = steps.next()) yield from + share * step.value;
  return step.value;
}
