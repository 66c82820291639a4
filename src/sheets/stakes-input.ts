import type { Frame } from '../geo/frame.ts';
import type { Surroundings } from '../outside/surroundings.ts';
import type { StakePlan } from '../stakes/stake-plan.ts';
import type { PaperSize } from './paper.ts';
import type { LengthUnit } from './plan-input.ts';

/** All that the page of shadow stakes shows: plain data, no document. */
export interface StakesPageInput {
  readonly paper: PaperSize;
  readonly unit: LengthUnit;
  readonly siteName: string;
  readonly layoutName: string | null;
  /** When the page was made, as it is to be printed. */
  readonly madeOn: string;
  /** The day of the stakes: "Monday 21 June 2027". */
  readonly day: string;
  /** The clocks the times are of: "Atlantic Daylight Time". */
  readonly clocks: string;
  readonly frame: Frame;
  /** Compass declination where it is known, east positive. */
  readonly declinationDeg: number | null;
  readonly plan: StakePlan;
  readonly around: Surroundings;
  /** "Ground through 12 spot levels". */
  readonly ground: string;
}
