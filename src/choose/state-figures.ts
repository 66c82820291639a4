import type { YearLight } from '../light/light-types.ts';
import { cellCount } from '../numeric/grid.ts';
import type { ShelterResult } from '../wind/shelter-types.ts';
import type { Enough, StateFigures } from './choose-types.ts';

/** Bands of a shelter result. */
const GROWING = 0;
const REST = 1;
const YEAR = 2;

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
  const mean = (value: (cell: number) => number): number => {
    let [sum, count] = [0, 0];
    for (let cell = 0; cell < cells; cell++) {
      if (!mask[cell]) continue;
      const here = value(cell);
      if (Number.isNaN(here)) continue;
      sum += here;
      count++;
    }
    return count > 0 ? sum / count : Number.NaN;
  };
  const cut = (band: number) => (cell: number) => 1 - shelter.windShare[band * cells + cell];
  /** 1 or 0; NaN where nothing is known. */
  const isLit = (cell: number) => atLeast(light.lightShare[cell], enough.light);
  const isSheltered = (cell: number) => atLeast(cut(GROWING)(cell), enough.windCut);
  return {
    windCutGrowing: mean(cut(GROWING)),
    windCutRest: mean(cut(REST)),
    galeHours: mean((cell) => shelter.galeHours[YEAR * cells + cell]),
    sunHoursGrowing: mean((cell) => light.seasonHours[cell]),
    sunHoursMidwinter: mean((cell) => light.midwinterHours[cell]),
    lightGrowing: mean((cell) => light.lightShare[cell]),
    lightMidwinter: mean((cell) => light.midwinterShare[cell]),
    lightEnoughShare: mean(isLit),
    shelterEnoughShare: mean(isSheltered),
    bothShare: mean((cell) => isLit(cell) * isSheltered(cell)),
  };
}

const atLeast = (value: number, limit: number): number =>
  Number.isNaN(value) ? Number.NaN : value >= limit ? 1 : 0;
