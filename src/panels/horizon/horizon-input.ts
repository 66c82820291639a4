import { declinationAt } from '../../geo/declination.ts';
import { findSpot } from '../../sheets/find-spot.ts';
import type { HorizonInput, HorizonPageInput, HorizonPeriod } from '../../sheets/horizon-input.ts';
import type { PaperSize } from '../../sheets/paper.ts';
import { seasonWords } from '../../site/season-words.ts';
import type { AppState, Period } from '../../state/model.ts';

/** Which of the table's columns the app's period is. */
export const horizonPeriod = (period: Period): HorizonPeriod =>
  typeof period === 'number' ? 'month' : period;

type Needs = Pick<AppState, 'horizon' | 'horizonAt' | 'document' | 'centre' | 'unitSystem'>;

/** The horizon as it is drawn; null until the one from the chosen spot is there. */
export function horizonInput(state: Needs, today: Date): HorizonInput | null {
  const found = state.horizon.result;
  if (!found || found.at !== state.horizonAt) return null;
  return {
    view: found.view,
    things: found.things,
    hours: found.hours,
    seasonWords: seasonWords(state.document.site, state.centre[1]),
    declinationDeg: declinationAt(found.at, today, found.view.groundM).declinationDeg,
    unit: state.unitSystem === 'metric' ? 'm' : 'ft',
  };
}

/** The same with what the sheet says beside it. */
export function horizonPageInput(state: AppState, paper: PaperSize, today: Date): HorizonPageInput | null {
  const input = horizonInput(state, today);
  const found = state.horizon.result;
  if (!input || !found || !state.ground) return null;
  return {
    ...input,
    paper,
    siteName: state.document.site.name,
    layoutName: found.layout,
    date: today.toLocaleDateString(undefined, { day: 'numeric', month: 'long', year: 'numeric' }),
    year: found.year,
    calendarYear: found.calendarYear,
    lonLat: found.at,
    findIt: findSpot(state.document, state.frame, state.ground, found.layout, found.at, {
      unit: input.unit,
      declinationDeg: input.declinationDeg,
    }),
    assumed: found.assumed,
  };
}
