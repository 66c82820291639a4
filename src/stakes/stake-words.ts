import type { Taped } from '../geo/tape.ts';
import { compassWord } from './compass-word.ts';
import type { StakeScore } from './score-readings.ts';
import type { ReferenceLine, Stake } from './stake-plan.ts';
import type { StakedThing } from './staked-thing.ts';

/** What lengths are said in; feet are said with inches where a tape is read. */
export type TapeUnit = 'm' | 'ft';
const M_PER_FOOT = 0.3048;
/** Level and slope are told apart from here, m. */
const SLOPE_TOLD_M = 0.01;

/** A length to be taped: "12.42 m", or "40 ft 9 in". */
export function tapeText(lengthM: number, unit: TapeUnit): string {
  if (unit === 'm') return `${lengthM.toFixed(2)} m`;
  const inches = Math.round((lengthM / M_PER_FOOT) * 12);
  return `${Math.floor(inches / 12)} ft ${inches % 12} in`;
}

/** A length said in passing: "0.4 m", "1.3 ft". */
export const roughText = (lengthM: number, unit: TapeUnit): string =>
  `${(unit === 'm' ? lengthM : lengthM / M_PER_FOOT).toFixed(1)} ${unit}`;

/** "12.42 m", with "(12.51 m on the slope)" where the two differ by more than a centimetre. */
export const tapedText = ({ levelM, tapeM }: Taped, unit: TapeUnit): string =>
  Math.abs(tapeM - levelM) > SLOPE_TOLD_M
    ? `${tapeText(levelM, unit)} (${tapeText(tapeM, unit)} on the slope)`
    : tapeText(levelM, unit);

/** "From A 12.42 m towards B, then 6.30 m square to the left." */
export function offsetWords(stake: Stake, { a, b }: ReferenceLine, unit: TapeUnit): string {
  const way = stake.backwards ? `away from ${b.letter}` : `towards ${b.letter}`;
  return `From ${a.letter} ${tapedText(stake.alongLine, unit)} ${way}, then ${tapedText(stake.square, unit)} square to the ${stake.side}.`;
}

/** "A and B: corners of Pound Field." */
export function lineWords({ a, b, length, isSide }: ReferenceLine, unit: TapeUnit): string {
  const ends =
    a.words === b.words
      ? `${a.letter} and ${b.letter}, each a ${a.words}`
      : `${a.letter}, ${a.words}, and ${b.letter}, ${b.words}`;
  return `${ends}; ${tapedText(length, unit)} apart${isSide ? ' along that side' : ''}.`;
}

const THING_WORDS: Record<StakedThing['kind'], string> = {
  tree: 'tree',
  belt: 'belt',
  block: 'wood',
  wall: 'wall',
  building: 'building',
};

const CROWN_WORDS = {
  ellipsoid: 'the far shoulder of its rounded crown, beyond and below its top',
  dome: 'the far shoulder of its domed crown, beyond and below its top',
  cone: 'the very top of its pointed crown',
  cylinder: 'the far rim of its flat top',
} as const;

/** What of a thing casts the tip that is staked. */
export function castWords(thing: StakedThing, alongM: number | null): string {
  if (thing.crownForm) return CROWN_WORDS[thing.crownForm];
  const place = thing.places.find((each) => each.alongM === alongM)?.words;
  if (thing.kind === 'belt')
    return `the upper edge on its far side, at ${place ?? `${alongM?.toFixed(1)} m from its first end`}`;
  return `the top of ${place ?? `its outline ${alongM?.toFixed(1)} m from its first corner`}`;
}

/** "17.0 m tall, measured 2026". */
export const heightWords = (thing: StakedThing, unit: TapeUnit): string =>
  `${roughText(thing.heightM, unit)} tall`;

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

/** "5 readings: the tip was 0.4 m short in the mean, 90 % within 0.9 m." and what that fits; by rule from the numbers. */
export function scoreSentences(score: StakeScore, unit: TapeUnit): string[] {
  const count = score.readings.length;
  if (count === 0) return ['No reading yet that can be scored.'];
  const where = missWords(score.meanBeyondM, score.meanRightM, unit);
  const first =
    count === 1
      ? `1 reading: the tip was ${where}.`
      : `${count} readings: the tip was ${where} in the mean, ${
          count < 5
            ? `the furthest ${roughText(score.furthestM, unit)} off`
            : `90 % within ${roughText(score.within90M, unit)}`
        }.`;
  return [first, causeWords(score, unit)];
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
      const toward = compassWord((Math.atan2(cause.eastM, cause.northM) * 180) / Math.PI);
      return `That fits a ${THING_WORDS[kind]} that stands ${roughText(away, unit)} further ${toward} than it is drawn.`;
    }
    default:
      return 'That is as near as the edge of a shadow can be seen.';
  }
}
