import { declinationAt } from '../../geo/declination.ts';
import { surroundings } from '../../outside/surroundings.ts';
import type { PaperSize } from '../../sheets/paper.ts';
import type { StakesPageInput } from '../../sheets/stakes-input.ts';
import type { AppState } from '../../state/model.ts';
import { stakedSiteOf, stakesAnswer } from '../../state/shadow-stakes.ts';
import { clocksWords, dayWords } from '../../sun/day-words.ts';

/** All that the printed page of the open shadow stakes shows; null where there is no stake. */
export function stakesPageInput(state: AppState, paper: PaperSize, today: Date): StakesPageInput | null {
  const plan = stakesAnswer(state)?.plan;
  const site = stakedSiteOf(state);
  if (!plan || !site) return null;
  return {
    paper,
    unit: state.unitSystem === 'metric' ? 'm' : 'ft',
    siteName: state.document.site.name,
    layoutName: state.layout,
    madeOn: dayWords(today.toISOString().slice(0, 10)),
    date: plan.date,
    day: dayWords(plan.date, true),
    clocks: clocksWords(plan.stakes[0].utcMs, plan.timeZone),
    frame: state.frame,
    declinationDeg: declinationAt(plan.thing.middle, new Date(`${plan.date}T12:00:00Z`)).declinationDeg,
    plan,
    around: surroundings(site, plan.date),
    ground: state.groundDescription,
  };
}
