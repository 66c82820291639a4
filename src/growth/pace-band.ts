import type { Pace } from './height-curve.ts';

/** The ends and the middle of what is not known of growth. */
export const PACES = ['slow', 'usual', 'fast'] as const satisfies readonly Pace[];

/** A value at slow, usual and fast growth. */
export type PaceBand<Value> = Readonly<Record<Pace, Value>>;

export const bandOf = <Value>(at: (pace: Pace) => Value): PaceBand<Value> => ({
  slow: at('slow'),
  usual: at('usual'),
  fast: at('fast'),
});

/** How much later b is than a, growth by growth, so that what both share drops out; null where one of them never is. */
export const laterBy = (a: PaceBand<number | null>, b: PaceBand<number | null>): PaceBand<number | null> =>
  bandOf((pace) => {
    const [one, other] = [a[pace], b[pace]];
    return one === null || other === null ? null : other - one;
  });
