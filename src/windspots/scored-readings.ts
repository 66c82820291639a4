import type { KeptSpot, MeterReading } from './kept-spots.ts';

/** A wind from further round than this is another wind than was written for, degrees. */
const SAME_WIND_DEG = 20;
/** So many days from the day that was written for leaves and heights are still the same. */
const SAME_SEASON_DAYS = 21;
/** A shorter reading is of a gust, minutes. */
const LEAST_MINUTES = 5;
/** Hand meters stall below this in the open, m/s. */
const LEAST_OPEN_MPS = 1.5;

export interface ScoredSpot {
  readonly kept: KeptSpot;
  readonly reading: MeterReading;
  /** Read share of open wind, and how far it is from the figure as it stood; above zero: more wind. */
  readonly share: number;
  readonly missShare: number;
  /** Whether it lies in the range by the function, only in that of all measured belts, or in neither, as they stood. */
  readonly within: 'function' | 'measured' | 'neither';
}

/** The readings beside what was written down, whatever may explain them. */
export interface SpotReadings {
  readonly label: string;
  readonly readings: readonly ScoredSpot[];
  /** Readings that cannot be scored, and why. */
  readonly left: readonly { readonly kept: KeptSpot; readonly why: string }[];
  /** Written down and not read yet. */
  readonly waiting: readonly KeptSpot[];
  readonly meanMissShare: number;
}

/** How far the readings lie from what was written down; no engine is asked. */
export function scoredReadings(label: string, kept: readonly KeptSpot[]): SpotReadings {
  const readings: ScoredSpot[] = [];
  const left: { kept: KeptSpot; why: string }[] = [];
  for (const each of kept) {
    if (!each.reading) continue;
    const why = wrongWith(each, each.reading);
    if (why !== null) left.push({ kept: each, why });
    else readings.push(scored(each, each.reading));
  }
  return {
    label,
    readings,
    left,
    waiting: kept.filter(({ reading }) => reading === null),
    meanMissShare: readings.reduce((sum, { missShare }) => sum + missShare, 0) / readings.length,
  };
}

/** Degrees between two directions, 0 to 180. */
const turnBetween = (a: number, b: number): number => Math.abs(((a - b + 540) % 360) - 180);

const DAY_MS = 86_400_000;

function wrongWith({ expected }: KeptSpot, reading: MeterReading): string | null {
  const turnDeg = turnBetween(reading.windFromDeg, expected.windFromDeg);
  if (turnDeg > SAME_WIND_DEG)
    return `the wind came from ${Math.round(turnDeg)}° further round than was written for`;
  const days = Math.abs(Date.parse(reading.date) - Date.parse(expected.date.slice(0, 10))) / DAY_MS;
  if (days > SAME_SEASON_DAYS)
    return `it was read ${Math.round(days)} days from the day that was written for: leaves and heights may be others`;
  if (reading.minutes < LEAST_MINUTES)
    return `the meters ran ${reading.minutes} minutes; in fewer than ${LEAST_MINUTES} a gust decides`;
  if (reading.openMps < LEAST_OPEN_MPS)
    return `the open wind was ${reading.openMps} m/s; below ${LEAST_OPEN_MPS} m/s hand meters stall`;
  return null;
}

function scored(kept: KeptSpot, reading: MeterReading): ScoredSpot {
  const { share: expected, functionLow, functionHigh, low, high } = kept.expected;
  const share = reading.spotMps / reading.openMps;
  const isIn = (from: number, to: number) => share >= from && share <= to;
  return {
    kept,
    reading,
    share,
    missShare: share - expected,
    within: isIn(functionLow, functionHigh) ? 'function' : isIn(low, high) ? 'measured' : 'neither',
  };
}
