import type { PaperSize } from '../../sheets/paper.ts';
import type { StakesPageInput } from '../../sheets/stakes-input.ts';
import type { AppState } from '../../state/model.ts';
import { stakesAnswer } from '../../state/shadow-stakes.ts';
import { clocksWords } from '../../sun/day-words.ts';
import { outdoorPageInput } from '../print/outdoor-input.ts';

/** All that the printed page of the open shadow stakes shows; null where there is no stake. */
export function stakesPageInput(state: AppState, paper: PaperSize, today: Date): StakesPageInput | null {
  const plan = stakesAnswer(state)?.plan;
  if (!plan) return null;
  const input = outdoorPageInput(state, { paper, today, date: plan.date, middle: plan.thing.middle });
  return input && { ...input, clocks: clocksWords(plan.stakes[0].utcMs, plan.timeZone), plan };
}
