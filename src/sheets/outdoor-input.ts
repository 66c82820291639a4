import type { Frame } from '../geo/frame.ts';
import type { Surroundings } from '../outside/surroundings.ts';
import type { PaperSize } from './paper.ts';
import type { LengthUnit } from './plan-input.ts';

/** What every page that is taken outside with a tape shows: plain data, no document. */
export interface OutdoorPageInput {
  readonly paper: PaperSize;
  readonly unit: LengthUnit;
  readonly siteName: string;
  readonly layoutName: string | null;
  /** When the page was made, as it is to be printed. */
  readonly madeOn: string;
  /** The day it is for, YYYY-MM-DD and as it is to be printed: "Monday 21 June 2027". */
  readonly date: string;
  readonly day: string;
  readonly frame: Frame;
  /** Compass declination where it is known, east positive. */
  readonly declinationDeg: number | null;
  readonly around: Surroundings;
  /** "Ground through 12 spot levels". */
  readonly ground: string;
}
