import type { PaperSize } from '../../sheets/paper.ts';
import type { WindPageInput } from '../../sheets/wind-page-input.ts';
import { seasonWords } from '../../site/season-words.ts';
import type { AppState } from '../../state/model.ts';
import { BEAUFORT_SCALE, windOfSite, windRestsOn } from '../../state/site-wind.ts';
import { dayWords } from '../../sun/day-words.ts';

/** All that the printed page of the wind shows; null where there is no wind to show. */
export function windPageInput(state: AppState, paper: PaperSize, today: Date): WindPageInput | null {
  const answer = windOfSite(state);
  if ('wrong' in answer) return null;
  const { facts, assumed } = answer.wind;
  return {
    paper,
    unit: state.unitSystem === 'metric' ? 'm/s' : 'mph',
    siteName: state.document.site.name,
    madeOn: dayWords(today.toISOString().slice(0, 10)),
    growingWords: seasonWords(state.document.site, state.centre[1]),
    growing: facts.growing,
    rest: facts.rest,
    signs: BEAUFORT_SCALE,
    rests: windRestsOn(state, answer.wind),
    assumed,
  };
}
