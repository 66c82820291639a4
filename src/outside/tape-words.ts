import type { Offsets } from './offsets.ts';
import type { ReferenceLine } from './reference-line.ts';

/** What lengths are said in; feet are said with inches where a tape is read. */
export type TapeUnit = 'm' | 'ft';
const M_PER_FOOT = 0.3048;

/** A length to be taped: "12.42 m", or "40 ft 9 in". */
export function tapeText(lengthM: number, unit: TapeUnit): string {
  if (unit === 'm') return `${lengthM.toFixed(2)} m`;
  const inches = Math.round((lengthM / M_PER_FOOT) * 12);
  return `${Math.floor(inches / 12)} ft ${inches % 12} in`;
}

/** A length said in passing: "0.4 m", "1.3 ft". */
export const roughText = (lengthM: number, unit: TapeUnit): string =>
  `${(unit === 'm' ? lengthM : lengthM / M_PER_FOOT).toFixed(1)} ${unit}`;

/** Lengths of blur said in the tape's small unit: "12 cm", "5 in". */
export const blurText = (lengthM: number, unit: TapeUnit): string =>
  lengthM >= 1
    ? roughText(lengthM, unit)
    : unit === 'm'
      ? `${Math.max(1, Math.round(lengthM * 100))} cm`
      : `${Math.max(1, Math.round((lengthM / M_PER_FOOT) * 12))} in`;

/** As a tight tape lies on the ground: "From A 12.42 m towards B, then 6.30 m square to the left." */
export function offsetWords(place: Offsets, { a, b }: ReferenceLine, unit: TapeUnit): string {
  const way = place.backwards ? `away from ${b.letter}` : `towards ${b.letter}`;
  return `From ${a.letter} ${tapeText(place.alongLine.tapeM, unit)} ${way}, then ${tapeText(place.square.tapeM, unit)} square to the ${place.side}.`;
}

/** "A, north-west corner of Pound Field, and B, south-west corner of Pound Field; 99.07 m apart along that side." */
export const lineWords = ({ a, b, length, isSide }: ReferenceLine, unit: TapeUnit): string =>
  `${a.letter}, ${a.words}, and ${b.letter}, ${b.words}; ${tapeText(length.tapeM, unit)} apart${isSide ? ' along that side' : ''}.`;

/** "17.4 m from A and 81.2 m from B": the check by two tapes. */
export const twoTapesWords = ({ fromA, fromB }: Offsets, { a, b }: ReferenceLine, unit: TapeUnit): string =>
  `${tapeText(fromA.tapeM, unit)} from ${a.letter} and ${tapeText(fromB.tapeM, unit)} from ${b.letter}`;
