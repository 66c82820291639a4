import type { Prices } from '../site/records/site.ts';
import type { Holdings } from './holdings.ts';

export const COST_PARTS = ['trees', 'belts', 'walls'] as const;
export type CostPart = (typeof COST_PARTS)[number];

/** What the planned things of one layout cost, in the person's own money. */
export interface Costs {
  /** Null: there is some of it, and its price is not known. */
  readonly parts: Readonly<Record<CostPart, number | null>>;
  /** Null where a part is not known. */
  readonly total: number | null;
}

/** Prices are the person's: none is made up, so what has none has no cost. */
export function costsOf({ planned }: Holdings, prices: Prices | undefined): Costs {
  const of = (quantity: number, price: number | undefined) =>
    quantity === 0 ? 0 : price === undefined ? null : quantity * price;
  const parts = {
    trees: of(planned.trees, prices?.perTree),
    belts: of(planned.beltM, prices?.perBeltM),
    walls: of(planned.wallM, prices?.perWallM),
  };
  const known = COST_PARTS.map((part) => parts[part]);
  return {
    parts,
    total: known.includes(null) ? null : known.reduce<number>((sum, cost) => sum + (cost ?? 0), 0),
  };
}

/** Prices that are wanted for one of the layouts and not given. */
export const pricesMissing = (costs: readonly Costs[]): CostPart[] =>
  COST_PARTS.filter((part) => costs.some(({ parts }) => parts[part] === null));
