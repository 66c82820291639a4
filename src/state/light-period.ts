import type { LightResult } from '../light/light-types.ts';
import { cellCount } from '../numeric/grid.ts';
import type { Period } from './model.ts';

/** One value a cell for a period, from a light result's monthly bands. */
export type LightQuantity = 'light-share' | 'sun-hours' | 'daily-light';

/** Days in each month of a calendar year. */
const monthDays = (calendarYear: number): number[] =>
  Array.from({ length: 12 }, (_, month) => new Date(Date.UTC(calendarYear, month + 1, 0)).getUTCDate());

/** Days of the period in each month: what a month weighs in it. */
function weights(result: LightResult, period: Period, calendarYear: number): readonly number[] {
  const days = monthDays(calendarYear);
  if (period === 'season') return Array.from(result.growingDaysByMonth);
  if (period === 'year') return days;
  return days.map((count, month) => (month === period ? count : 0));
}

/** The pointer asks for the same periods of the same result at every move. */
const known = new WeakMap<LightResult, Map<string, Float32Array>>();

/**
 * Share of open light (0 to 1), hours of direct sun a day, or mol m-2 d-1, of the period; row-major as the grid.
 * The season's share is the engine's own thirteenth band; a year's share weighs the months by their open light.
 * Hours and daily light of a month that the season only touches count in proportion to its days within.
 */
export function lightOfPeriod(
  result: LightResult,
  quantity: LightQuantity,
  period: Period,
  calendarYear: number,
): Float32Array {
  const ofResult = known.get(result) ?? new Map<string, Float32Array>();
  known.set(result, ofResult);
  const key = `${quantity} ${period} ${calendarYear}`;
  const values = ofResult.get(key) ?? meanOverPeriod(result, quantity, period, calendarYear);
  ofResult.set(key, values);
  return values;
}

function meanOverPeriod(
  result: LightResult,
  quantity: LightQuantity,
  period: Period,
  calendarYear: number,
): Float32Array {
  const cells = cellCount(result.grid);
  if (quantity === 'light-share' && period === 'season') return result.lightShare.subarray(12 * cells);
  if (quantity === 'light-share' && typeof period === 'number')
    return result.lightShare.subarray(period * cells, (period + 1) * cells);
  const daysOfPeriod = weights(result, period, calendarYear);
  const daysOfMonth = monthDays(calendarYear);
  const band =
    quantity === 'sun-hours'
      ? result.directHours
      : quantity === 'daily-light'
        ? result.dailyLightIntegral
        : result.lightShare;
  const monthWeight = daysOfPeriod.map((days, month) => {
    if (quantity === 'sun-hours') return days / daysOfMonth[month];
    if (quantity === 'daily-light') return days;
    return days * result.openDailyLightIntegral[month];
  });
  const total =
    quantity === 'light-share'
      ? monthWeight.reduce((sum, weight) => sum + weight, 0)
      : daysOfPeriod.reduce((sum, days) => sum + days, 0);
  const values = new Float32Array(cells);
  for (let month = 0; month < 12; month++) {
    const weight = monthWeight[month] / total;
    if (!(weight > 0)) continue;
    const at = month * cells;
    for (let cell = 0; cell < cells; cell++) values[cell] += weight * band[at + cell];
  }
  return values;
}
