import type { PaperSize } from './paper.ts';
import type { RosePetal } from './rose-shape.ts';

export interface WindPageSector extends RosePetal {
  readonly meanSpeedMps: number;
  readonly weibullK: number;
  readonly weibullScaleMps: number;
}
export interface WindPageSeason {
  readonly hours: number;
  readonly calmShare: number;
  readonly meanSpeedMps: number;
  readonly sectors: readonly WindPageSector[];
  /** Hours with at least each Beaufort force, 0 to 12. */
  readonly hoursFromForce: readonly number[];
}
/** One of Beaufort's forces. */
export interface WindSign {
  readonly force: number;
  readonly name: string;
  readonly fromMps: number;
  readonly landSign: string;
}

/** All that the page of the wind shows: plain data, no document. */
export interface WindPageInput {
  readonly paper: PaperSize;
  readonly unit: 'm/s' | 'mph';
  readonly siteName: string;
  /** When the page was made, as it is to be printed. */
  readonly madeOn: string;
  /** "April–September". */
  readonly growingWords: string;
  readonly growing: WindPageSeason;
  readonly rest: WindPageSeason;
  /** All of Beaufort's forces, 0 first. */
  readonly signs: readonly WindSign[];
  /** What it rests on, in sentences. */
  readonly rests: readonly string[];
  /** What was taken for granted, one clause each. */
  readonly assumed: readonly string[];
}
