import type { AtEnds } from '../jobs/run-ends.ts';
import { type CauseChange, causesBySize, type EngineError } from '../jobs/run-ends-causes.ts';
import type { Cause, SceneEnd } from '../scene/ends.ts';
import type { MaskedArea } from './area-masks.ts';

/** What one end makes of an area's mean. */
interface EndSummary {
  /** Null: the engine's own error, to either side. */
  readonly end: SceneEnd | null;
  readonly mean: number;
  /** Against the expected mean. */
  readonly change: number;
  /** In a tenth of the area the value changes by at least this much; by an error that the engine states: in a hundredth. */
  readonly widelyBy: number;
}

/** What is not known and would change the mean of a quantity over the areas of a run, largest first. */
export interface WhatWouldChange {
  readonly quantity: 'lightShareSeason' | 'windShareSeason';
  readonly areas: readonly {
    readonly id: MaskedArea['id'] | null;
    readonly name: string;
    readonly expected: number;
    readonly causes: readonly {
      readonly cause: CauseChange['cause'];
      readonly ends: readonly EndSummary[];
    }[];
  }[];
}

/**
 * @param at one value a cell of the quantity.
 * @param areas the fields; where there are none the whole grid is one area.
 * @param engineError what the engine states; null: found from its finer steps.
 */
export function whatWouldChange(
  quantity: WhatWouldChange['quantity'],
  at: AtEnds<Float32Array>,
  areas: readonly MaskedArea[],
  causes: readonly Cause[],
  engineError: EngineError | null,
): WhatWouldChange {
  const everything = () => ({
    id: null,
    name: 'Everything',
    mask: new Uint8Array(at.usual.length).fill(1),
  });
  const over = areas.length > 0 ? areas : [everything()];
  return {
    quantity,
    areas: over.flatMap(({ id, name, mask }) => {
      const found = causesBySize(at, causes, (values) => values, mask, engineError);
      return found
        ? [
            {
              id,
              name,
              expected: found[0].ends[0].usual,
              causes: found.map(({ cause, ends }) => ({ cause, ends: ends.map(endSummary) })),
            },
          ]
        : [];
    }),
  };
}

const endSummary = ({ end, usual, mean, widelyBy }: CauseChange['ends'][number]): EndSummary => ({
  end,
  mean,
  change: mean - usual,
  widelyBy,
});
