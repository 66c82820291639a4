import type { LightResult } from '../light/light-types.ts';
import { cellCount } from '../numeric/grid.ts';
import type { ShelterResult } from '../wind/shelter-types.ts';
import { type Spread, spreadOver } from './spread.ts';

/** Light over one area. Null where none of its cell centres has a value. */
export interface LightFigures {
  readonly directHoursYear: Spread | null;
  readonly directHoursSeason: Spread | null;
  readonly lightShareSeason: Spread | null;
  /** mol m-2 d-1. */
  readonly dailyLightIntegralSeason: Spread | null;
}

const MONTHS = 12;
const SEASON_BAND = 12;

const daysInMonth = (calendarYear: number, month: number): number =>
  new Date(Date.UTC(calendarYear, month + 1, 0)).getUTCDate();

/**
 * Figures of the cells of a mask. A month that lies only partly in the growing season counts its direct hours by its
 * share of days (exact where seasons begin and end with a month).
 */
export function lightFigures(result: LightResult, mask: Uint8Array, calendarYear: number): LightFigures {
  const cells = cellCount(result.grid);
  const { directHours, lightShare, dailyLightIntegral, growingDaysByMonth } = result;
  const monthShare = Array.from(growingDaysByMonth, (days, month) => days / daysInMonth(calendarYear, month));
  const growingDays = growingDaysByMonth.reduce((sum, days) => sum + days, 0);
  const weighted = (values: Float32Array, cell: number, weightOf: (month: number) => number) => {
    let sum = 0;
    for (let month = 0; month < MONTHS; month++) sum += values[month * cells + cell] * weightOf(month);
    return sum;
  };
  return {
    directHoursYear: spreadOver(mask, (cell) => weighted(directHours, cell, () => 1)),
    directHoursSeason: spreadOver(mask, (cell) => weighted(directHours, cell, (month) => monthShare[month])),
    lightShareSeason: spreadOver(mask, (cell) => lightShare[SEASON_BAND * cells + cell]),
    dailyLightIntegralSeason: spreadOver(mask, (cell) =>
      weighted(dailyLightIntegral, cell, (month) => growingDaysByMonth[month] / growingDays),
    ),
  };
}

/** Share of the area's cells that keep a share of open light over the growing season; 0 where no cell has a value. */
export function areaShareWithLight(result: LightResult, mask: Uint8Array, shareToKeep: number): number {
  const cells = cellCount(result.grid);
  let counted = 0;
  let enough = 0;
  for (let cell = 0; cell < cells; cell++) {
    const share = result.lightShare[SEASON_BAND * cells + cell];
    if (mask[cell] === 0 || Number.isNaN(share)) continue;
    counted++;
    if (share >= shareToKeep) enough++;
  }
  return counted > 0 ? enough / counted : 0;
}

/** Shelter over one area. */
export interface ShelterFigures {
  readonly windShareSeason: Spread | null;
  readonly windShareRest: Spread | null;
  readonly windShareYear: Spread | null;
  /** Ground where the year's mean wind is below 50, 70 and 85 % of open wind, square metres. */
  readonly shelteredAreaM2: { readonly below50: number; readonly below70: number; readonly below85: number };
}

/** @param areaM2 of the whole area: the counted cells stand for it, each for an equal part. */
export function shelterFigures(result: ShelterResult, mask: Uint8Array, areaM2: number): ShelterFigures {
  const cells = cellCount(result.grid);
  const spread = (band: number) => spreadOver(mask, (cell) => result.windShare[band * cells + cell]);
  let counted = 0;
  const below = [0, 0, 0];
  const limits = [0.5, 0.7, 0.85];
  for (let cell = 0; cell < cells; cell++) {
    if (mask[cell] === 0) continue;
    counted++;
    const share = result.windShare[2 * cells + cell];
    limits.forEach((limit, i) => {
      if (share < limit) below[i]++;
    });
  }
  const [below50, below70, below85] = below.map((count) => (counted > 0 ? (count / counted) * areaM2 : 0));
  return {
    windShareSeason: spread(0),
    windShareRest: spread(1),
    windShareYear: spread(2),
    shelteredAreaM2: { below50, below70, below85 },
  };
}
