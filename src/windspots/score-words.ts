import { roughText, type TapeUnit } from '../outside/tape-words.ts';
import type { WindFit } from './fit-wind.ts';
import type { KeptSpot } from './kept-spots.ts';
import type { SpotCauses } from './score-spots.ts';
import type { ScoredSpot, SpotReadings } from './scored-readings.ts';
import { percent, pointsText, rangeText, speedText } from './spot-words.ts';

/** A miss smaller than this is none, share of open wind. */
const NO_MISS = 0.005;

const missWords = (missShare: number): string =>
  Math.abs(missShare) < NO_MISS
    ? 'as the function says'
    : `${pointsText(missShare)} ${missShare > 0 ? 'more' : 'less'} wind than the function says`;

/** A score of which what explains the readings may still be worked out. */
export type ShownScore = SpotReadings & Partial<SpotCauses>;

/** The mean miss in one figure: "12 points more", "As written". */
export function missFigure({ readings, meanMissShare }: SpotReadings): string {
  if (readings.length === 0) return 'Not read yet';
  if (Math.abs(meanMissShare) < NO_MISS) return 'As written';
  return `${pointsText(meanMissShare)} ${meanMissShare > 0 ? 'more' : 'less'}`;
}

const WITHIN = {
  function: 'inside the range by the function',
  measured: 'outside the range by the function, inside what was measured behind other belts',
  neither: 'outside all that was expected',
} as const;

/** "written 13 to 79 %, read 31 % (1.2 m/s where the open meter showed 3.9 m/s): 14 points more wind …". */
export function readingWords(scored: ScoredSpot, unit: TapeUnit): string {
  const { kept, reading, share, missShare, within } = scored;
  const { low, high } = kept.expected;
  return `written ${rangeText({ low, high })}, read ${percent(share)} (${speedText(reading.spotMps, unit)} where the open meter showed ${speedText(reading.openMps, unit)}): ${missWords(missShare)}, ${WITHIN[within]}`;
}

/** "written 13 to 79 %, by the function 17 %; waits for its reading". */
export const waitingWords = ({ expected }: KeptSpot): string =>
  `written ${rangeText(expected)}, by the function ${percent(expected.share)}; waits for its reading`;

/** How many lay inside, how far off in the mean, and what that fits; by rule from the numbers. */
export function scoreSentences(score: ShownScore, unit: TapeUnit): string[] {
  const { readings, waiting } = score;
  const waits =
    waiting.length === 0
      ? []
      : [`${waiting.length} written down ${waiting.length === 1 ? 'waits' : 'wait'} for a reading.`];
  if (readings.length === 0) return ['No reading yet that can be scored.', ...waits];
  const count = (within: ScoredSpot['within']) => readings.filter((each) => each.within === within).length;
  const where =
    readings.length === 1
      ? [WITHIN[readings[0].within]]
      : (['function', 'measured', 'neither'] as const).flatMap((within) =>
          count(within) > 0 ? [`${count(within)} ${WITHIN[within]}`] : [],
        );
  const misses = readings.map(({ missShare }) => missShare);
  const range =
    readings.length === 1
      ? ''
      : ` (from ${signedPoints(Math.min(...misses))} to ${signedPoints(Math.max(...misses))})`;
  return [
    `${readings.length} ${readings.length === 1 ? 'reading' : 'readings'}: ${where.join('; ')}; ${readings.length === 1 ? '' : 'in the mean '}${missWords(score.meanMissShare)}${range}.`,
    ...causeWords(score, unit),
    ...waits,
  ];
}

const signedPoints = (share: number): string => `${pointsText(share)} ${share < 0 ? 'less' : 'more'}`;

function causeWords(score: ShownScore, unit: TapeUnit): string[] {
  const { fits, readings } = score;
  if (fits === undefined) return [];
  if (fits === null) return ['So few readings tell nothing apart: three at different distances begin to.'];
  if (fits.length === 0) return ['That is as near as two hand meters can tell.'];
  const weaker =
    readings.every(({ missShare }) => missShare > 0) && readings.some(({ within }) => within !== 'function');
  const known = weaker
    ? ' Behind dense belts the function is known to promise more shelter than anyone measured.'
    : '';
  return [`That fits ${fits.map((fit) => fitWords(fit, score, unit)).join(', or ')}.${known}`];
}

function fitWords({ what, factor }: WindFit, { belt }: ShownScore, unit: TapeUnit): string {
  const more = factor > 1;
  switch (what) {
    case 'height':
      return `a belt ${roughText(factor * (belt?.heightM ?? 0), unit)} tall instead of ${roughText(belt?.heightM ?? 0, unit)}${more ? '' : ', or ground so rough that the wind comes back sooner'}`;
    case 'foliage':
      return `a belt that lets ${percent((belt?.porosity ?? 0) ** factor)} of the daylight through instead of ${percent(belt?.porosity ?? 0)}`;
    default:
      return more
        ? `an open meter in ${percent(factor - 1)} more wind than open ground has, on a crest or held higher than the other`
        : `an open meter that itself stood in ${percent(1 - factor)} less wind, or was held lower than the other`;
  }
}
