import type { FirstLastSun } from '../light/first-last-sun-types.ts';
import { cellCount } from '../numeric/grid.ts';
import type { MaskedArea } from './area-masks.ts';
import { spreadOver } from './spread.ts';

/** First and last sun over one area on the day that stands for a month. */
export interface FirstLastFigures {
  readonly id: MaskedArea['id'];
  readonly name: string;
  /** 0 = January. */
  readonly month: number;
  /** Minutes after midnight that half of its ground has the first sun by, and has lost the last by; null: no sun at all. */
  readonly firstMin: number | null;
  readonly lastMin: number | null;
  /** Mean over all its ground, ground without sun included. */
  readonly sunHours: number | null;
  /** Share of its ground that has no sun all day. */
  readonly shareWithout: number;
}

/** Figures by area and month; cells in buildings do not count. */
export function firstLastFigures(result: FirstLastSun, areas: readonly MaskedArea[]): FirstLastFigures[] {
  const cells = cellCount(result.grid);
  return areas.flatMap(({ id, name, mask }) =>
    result.days.map((_, month): FirstLastFigures => {
      const of = (values: Float32Array) => spreadOver(mask, (cell) => values[month * cells + cell]);
      const without = spreadOver(mask, (cell) => {
        const hours = result.sunHours[month * cells + cell];
        return Number.isNaN(hours) ? Number.NaN : Number(hours === 0);
      });
      return {
        id,
        name,
        month,
        firstMin: of(result.firstMin)?.p50 ?? null,
        lastMin: of(result.lastMin)?.p50 ?? null,
        sunHours: of(result.sunHours)?.mean ?? null,
        shareWithout: without?.mean ?? 0,
      };
    }),
  );
}
