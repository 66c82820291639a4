import { roughText, type TapeUnit } from '../outside/tape-words.ts';
import { directionWord } from '../units/compass.ts';
import type { ScoredReading, StakeScore } from './score-readings.ts';
import { THING_WORDS } from './stake-words.ts';

const signed = (value: number, unit: TapeUnit, above: string, below: string): string =>
  `${roughText(Math.abs(value), unit)} ${value > 0 ? above : below}`;

/** Less than this is on the stake. */
const ON_STAKE_M = 0.05;

const missWords = (beyondM: number, rightM: number, unit: TapeUnit): string => {
  const parts = [
    ...(Math.abs(beyondM) >= ON_STAKE_M ? [signed(beyondM, unit, 'beyond', 'short')] : []),
    ...(Math.abs(rightM) >= ON_STAKE_M ? [signed(rightM, unit, 'to the right', 'to the left')] : []),
  ];
  return parts.length === 0 ? 'where it was computed' : parts.join(' and ');
};

const alongWords = (beyondM: number, unit: TapeUnit): string =>
  Math.abs(beyondM) < ON_STAKE_M ? 'where it was computed' : signed(beyondM, unit, 'beyond', 'short');

/** The mean miss in one figure: "0.4 m short", "on the stake". */
export function missFigure(score: StakeScore, unit: TapeUnit): string {
  if (score.readings.length === 0) return 'Not scored';
  const aside = Math.abs(score.meanRightM) > Math.abs(score.meanBeyondM);
  const missM = aside ? score.meanRightM : score.meanBeyondM;
  if (Math.abs(missM) < ON_STAKE_M) return 'As computed';
  return aside ? signed(missM, unit, 'to the right', 'to the left') : signed(missM, unit, 'beyond', 'short');
}

/** One reading's miss: "0.4 m beyond and 0.1 m to the left, 3 % of its 14.2 m; alone it fits 10.4 m". */
export function readingWords(scored: ScoredReading, unit: TapeUnit): string {
  const { beyondM, rightM, lengthM, fitsHeightM } = scored;
  const share = (100 * Math.hypot(beyondM, rightM)) / lengthM;
  return `${missWords(beyondM, rightM, unit)}, ${share.toFixed(share < 10 ? 1 : 0)} % of its ${roughText(lengthM, unit)}; by itself it fits a height of ${roughText(fitsHeightM, unit)}`;
}

/** How far the model missed, in the mean and at most, and what that fits; by rule from the numbers. */
export function scoreSentences(score: StakeScore, unit: TapeUnit): string[] {
  const count = score.readings.length;
  if (count === 0) return ['No reading yet that can be scored.'];
  const where = missWords(score.meanBeyondM, score.meanRightM, unit);
  if (count === 1) return [`1 reading: the tip was ${where}.`, causeWords(score, unit)];
  const beyond = score.readings.map(({ beyondM }) => beyondM);
  const shares = score.readings.map(({ beyondM, rightM, lengthM }) => Math.hypot(beyondM, rightM) / lengthM);
  const meanShare = shares.reduce((sum, share) => sum + share, 0) / count;
  const range = `from ${alongWords(Math.min(...beyond), unit)} to ${alongWords(Math.max(...beyond), unit)}`;
  const most = count < 5 ? '' : `; nine of ten within ${roughText(score.within90M, unit)}`;
  const first = `${count} readings: in the mean the tip was ${where} (${range}${most}), a miss of ${(100 * meanShare).toFixed(meanShare < 0.1 ? 1 : 0)} % of the shadow’s length`;
  return [`${first}.`, causeWords(score, unit)];
}

const NEAR_AN_HOUR_MIN = 8;

const clockWords = (slowMinutes: number): string => {
  const minutes = Math.round(Math.abs(slowMinutes));
  const hour = Math.abs(minutes - 60) <= NEAR_AN_HOUR_MIN ? ' (an hour: was summer time on?)' : '';
  return `a clock that was ${minutes} minute${minutes === 1 ? '' : 's'} ${slowMinutes > 0 ? 'slow' : 'fast'}${hour}`;
};
const northWords = (turnDeg: number): string =>
  `a north on the plan that is ${Math.abs(turnDeg).toFixed(1)}° too far ${turnDeg > 0 ? 'left' : 'right'}`;

function causeWords({ cause, kind, height }: StakeScore, unit: TapeUnit): string {
  switch (cause.what) {
    case 'height':
      return `That fits a ${THING_WORDS[kind]} ${signed(cause.byM, unit, 'taller', 'lower')} than the site says: ${roughText(height?.heightM ?? 0, unit)}, give or take ${roughText(Math.max(0.1, cause.errorM), unit)}.`;
    case 'clock':
      return `All lie to one side. That fits ${clockWords(cause.slowMinutes)}${cause.orNorthDeg === null ? '' : `, or ${northWords(cause.orNorthDeg)}`}.`;
    case 'north':
      return `All lie to one side. That fits ${northWords(cause.turnDeg)}${cause.orSlowMinutes === null ? '' : `, or ${clockWords(cause.orSlowMinutes)}`}.`;
    case 'place': {
      const away = Math.hypot(cause.eastM, cause.northM);
      const toward = directionWord((Math.atan2(cause.eastM, cause.northM) * 180) / Math.PI);
      return `That fits a ${THING_WORDS[kind]} that stands ${roughText(away, unit)} further ${toward} than it is drawn.`;
    }
    default:
      return 'That is as near as the edge of a shadow can be seen.';
  }
}
