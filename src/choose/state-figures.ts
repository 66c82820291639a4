import type { YearLight } from '../light/light-types.ts';
import { cellCount } from '../numeric/grid.ts';
import type { ShelterResult } from '../wind/shelter-types.ts';
import type { Enough, StateFigures } from './choose-types.ts';

/** Bands of a shelter result. */
const GROWING = 0;
const REST = 1;
const YEAR = 2;

/** In the order in which they are summed up below. */
const FIGURES = [
  'windCutGrowing',
  'windCutRest',
  'galeHours',
  'sunHoursGrowing',
  'sunHoursMidwinter',
  'lightGrowing',
  'lightMidwinter',
  'lightEnoughShare',
  'shelterEnoughShare',
  'bothShare',
] as const satisfies readonly (keyof StateFigures)[];

/**
 * A field's figures in one state, over its cells. A cell without a value for one quantity counts for the others.
 * @param mask 1 for the cells that count, of the grid that both results lie on.
 */
export function stateFigures(
  light: YearLight,
  shelter: ShelterResult,
  mask: Uint8Array,
  enough: Enough,
): StateFigures {
  const cells = cellCount(shelter.grid);
  const sums = new Float64Array(FIGURES.length);
  const counts = new Uint32Array(FIGURES.length);
  const here = new Float64Array(FIGURES.length);
  for (let cell = 0; cell < cells; cell++) {
    if (!mask[cell]) continue;
    here[0] = 1 - shelter.windShare[GROWING * cells + cell];
    here[1] = 1 - shelter.windShare[REST * cells + cell];
    here[2] = shelter.galeHours[YEAR * cells + cell];
    here[3] = light.seasonHours[cell];
    here[4] = light.midwinterHours[cell];
    here[5] = light.lightShare[cell];
    here[6] = light.midwinterShare[cell];
    here[7] = atLeast(light.lightShare[cell], enough.light);
    here[8] = atLeast(here[0], enough.windCut);
    here[9] = here[7] * here[8];
    for (let k = 0; k < here.length; k++) {
      if (Number.isNaN(here[k])) continue;
      sums[k] += here[k];
      counts[k]++;
    }
  }
  return Object.fromEntries(
    FIGURES.map((name, k) => [name, counts[k] > 0 ? sums[k] / counts[k] : Number.NaN]),
  ) as Record<(typeof FIGURES)[number], number>;
}

/** 1 or 0; NaN where nothing is known. */
const atLeast = (value: number, limit: number): number =>
  Number.isNaN(value) ? Number.NaN : value >= limit ? 1 : 0;
