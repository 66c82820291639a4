import { seededRandom } from '../numeric/random.ts';
import type { Matter } from '../site/records/choosing.ts';
import { CHOOSE_CAUSES, type ChooseCause, type ChooseEnd, ENDS_OF_CHOOSE_CAUSE } from './choose-ends.ts';
import { centreWeights, drawnWeights } from './order-weights.ts';
import { type Departures, type FieldValues, firstFields, valuesAt } from './rank-fields.ts';

/** One matter moved up or down in the order, and who comes first then. */
export interface OrderMove {
  /** Places in the order, 0 first. */
  readonly from: number;
  readonly to: number;
  readonly first: readonly number[];
}

/** How firm a choice is. Fields by their place in what was given. */
export interface Firmness {
  readonly draws: number;
  /** Share of draws in which each field comes first; where several are level each has its part. They add to 1. */
  readonly firstShare: readonly number[];
  /** Who comes first as expected, by the middle of all weights that keep the order; several are level. */
  readonly first: readonly number[];
  /** Ends that alone put another first. */
  readonly endsThatChange: readonly { readonly end: ChooseEnd; readonly first: readonly number[] }[];
  /** The shortest moves in the order that put another first; empty: none does. */
  readonly movesThatChange: readonly OrderMove[];
}

const DRAWS = 1000;
const SEED = 20;

/**
 * How often each field comes first over seeded draws of the weights that keep the order, and of where within its range
 * each thing lies that is not known, anywhere alike; and what alone would change who comes first.
 * The draws do not hang on the fields: the same seed gives the same answer in whatever order they come.
 */
export function firmness(fields: readonly FieldValues[], matters: readonly Matter[], seed = SEED): Firmness {
  const count = matters.length;
  const random = seededRandom(seed);
  const won = fields.map(() => 0);
  for (let draw = 0; draw < DRAWS; draw++) {
    const weights = drawnWeights(count, random);
    const away = Object.fromEntries(CHOOSE_CAUSES.map((cause) => [cause, 2 * random() - 1])) as Record<
      ChooseCause,
      number
    >;
    const first = firstFields(at(fields, matters, away), matters, weights);
    for (const k of first) won[k] += 1 / first.length;
  }
  const centre = centreWeights(count);
  const expected = at(fields, matters, {});
  const first = firstFields(expected, matters, centre);
  return {
    draws: DRAWS,
    firstShare: won.map((draws) => draws / DRAWS),
    first,
    endsThatChange: CHOOSE_CAUSES.flatMap((cause) =>
      ENDS_OF_CHOOSE_CAUSE[cause].flatMap((end, side) => {
        const then = firstFields(at(fields, matters, { [cause]: 2 * side - 1 }), matters, centre);
        return isAnother(then, first) ? [{ end, first: then }] : [];
      }),
    ),
    movesThatChange: shortestMoves(expected, matters, centre, first),
  };
}

const at = (fields: readonly FieldValues[], matters: readonly Matter[], away: Departures) =>
  fields.map((field) => valuesAt(field, matters, away));

/** Somebody comes first who did not before. */
const isAnother = (then: readonly number[], before: readonly number[]): boolean =>
  then.some((k) => !before.includes(k));

function shortestMoves(
  values: readonly (readonly number[])[],
  matters: readonly Matter[],
  centre: readonly number[],
  before: readonly number[],
): OrderMove[] {
  const moves = matters
    .flatMap((_, from) =>
      matters.flatMap((_, to): OrderMove[] => {
        if (from === to) return [];
        const places = matters.map((_, m) => m).filter((m) => m !== from);
        places.splice(to, 0, from);
        const weights = matters.map((_, m) => centre[places.indexOf(m)]);
        const first = firstFields(values, matters, weights);
        return isAnother(first, before) ? [{ from, to, first }] : [];
      }),
    )
    .sort((a, b) => Math.abs(a.from - a.to) - Math.abs(b.from - b.to));
  const shortest = moves.length > 0 ? Math.abs(moves[0].from - moves[0].to) : 0;
  const short = moves.filter(({ from, to }) => Math.abs(from - to) === shortest);
  // Two neighbours changing places are one move, whichever of them is said to move; and up is said before down.
  return shortest === 1
    ? short.filter(({ from, to }) => to < from)
    : short.filter(({ from, to }) => to < from || !short.some((other) => other.to < other.from));
}
