import { declinationAt } from '../../geo/declination.ts';
import type { LonLat } from '../../geo/frame.ts';
import { surroundings } from '../../outside/surroundings.ts';
import type { OutdoorPageInput } from '../../sheets/outdoor-input.ts';
import type { PaperSize } from '../../sheets/paper.ts';
import type { AppState } from '../../state/model.ts';
import { siteOutdoors } from '../../state/shadow-stakes.ts';
import { dayWords } from '../../sun/day-words.ts';

/**
 * What every page that is taken outside shows; null while the ground is not laid out.
 * @param date the day that the page is for, YYYY-MM-DD. @param middle where the compass is held.
 */
export function outdoorPageInput(
  state: AppState,
  {
    paper,
    today,
    date,
    middle,
  }: { readonly paper: PaperSize; readonly today: Date; readonly date: string; readonly middle: LonLat },
): OutdoorPageInput | null {
  const site = siteOutdoors(state);
  if (!site) return null;
  return {
    paper,
    unit: state.unitSystem === 'metric' ? 'm' : 'ft',
    siteName: state.document.site.name,
    layoutName: state.layout,
    madeOn: dayWords(today.toISOString().slice(0, 10)),
    date,
    day: dayWords(date, true),
    frame: state.frame,
    declinationDeg: declinationAt(middle, new Date(`${date}T12:00:00Z`)).declinationDeg,
    around: surroundings(site, date),
    ground: state.groundDescription,
  };
}
