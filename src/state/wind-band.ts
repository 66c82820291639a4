import { growingMonths } from './growing-months.ts';
import type { AppState } from './model.ts';

/** Band of the shelter result that answers for the chosen period: a month means its season. */
export function windBand(state: Pick<AppState, 'period' | 'document' | 'centre'>): 0 | 1 | 2 {
  if (state.period === 'season') return 0;
  if (state.period === 'year') return 2;
  return growingMonths(state.document.site, state.centre[1]).has(state.period) ? 0 : 1;
}
