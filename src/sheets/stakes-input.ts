import type { StakePlan } from '../stakes/stake-plan.ts';
import type { OutdoorPageInput } from './outdoor-input.ts';

/** All that the page of shadow stakes shows. */
export interface StakesPageInput extends OutdoorPageInput {
  /** The clocks the times are of: "Atlantic Daylight Time". */
  readonly clocks: string;
  readonly plan: StakePlan;
}
