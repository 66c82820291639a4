/**
 * Which one thing set right would explain readings of the wind best. Least squares in units of what two meters may be
 * off by, one explanation at a time; between explanations by the sum of squares plus a price for each number that one
 * is free to choose.
 */

/** Stricter than Akaike's 2: readings are few. */
const PRICE = 4;
const STEPS = 120;

/** One reading beside the model: shares of open wind under each explanation, at rising values of what it may choose. */
export interface Read {
  readonly share: number;
  /** What two meters may be off by, one standard deviation. */
  readonly deviation: number;
  readonly model: number;
  readonly under: Readonly<Record<Explanation, readonly number[]>>;
}

/** A belt taller or lower; denser or more open; a meter in the open that did not stand in open wind. */
export const EXPLANATIONS = ['height', 'foliage', 'open'] as const;
export type Explanation = (typeof EXPLANATIONS)[number];

/** Values at which each explanation is worked out: factors of the height, of the foliage's depth, of the open wind. */
export const NODES: Readonly<Record<Explanation, readonly number[]>> = {
  height: [0.6, 0.75, 0.9, 1, 1.1, 1.3, 1.5],
  foliage: [0.2, 0.4, 0.7, 1, 1.4, 2],
  open: [0.6, 0.7, 0.8, 0.9, 1, 1.1, 1.2, 1.3],
};

export interface WindFit {
  readonly what: Explanation;
  readonly factor: number;
  readonly score: number;
}

/** Straight between nodes. */
function between(nodes: readonly number[], values: readonly number[], at: number): number {
  let i = 1;
  while (i < nodes.length - 1 && nodes[i] < at) i++;
  const u = (at - nodes[i - 1]) / (nodes[i] - nodes[i - 1]);
  return values[i - 1] + u * (values[i] - values[i - 1]);
}

const squares = (reads: readonly Read[], shareOf: (read: Read) => number): number =>
  reads.reduce((sum, read) => sum + ((read.share - shareOf(read)) / read.deviation) ** 2, 0);

/** Score of the model as it is. */
const asItIs = (reads: readonly Read[]): number => squares(reads, ({ model }) => model);

function fitOf(reads: readonly Read[], what: Explanation): WindFit {
  const nodes = NODES[what];
  const [first, last] = [nodes[0], nodes[nodes.length - 1]];
  let best: WindFit = { what, factor: 1, score: Number.POSITIVE_INFINITY };
  for (let i = 0; i <= STEPS; i++) {
    const factor = first + (i / STEPS) * (last - first);
    const score = PRICE + squares(reads, ({ under }) => between(nodes, under[what], factor));
    if (score < best.score) best = { what, factor, score };
  }
  return best;
}

/** The explanation that fits best, and those that fit as well within the price of a number; empty: none is needed. */
export function bestFits(reads: readonly Read[]): readonly WindFit[] {
  const fits = EXPLANATIONS.map((what) => fitOf(reads, what)).sort((a, b) => a.score - b.score);
  if (asItIs(reads) <= fits[0].score) return [];
  return fits.filter(({ score }) => score - fits[0].score < PRICE);
}
