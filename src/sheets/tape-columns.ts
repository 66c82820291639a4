import type { Offsets } from '../outside/offsets.ts';
import type { ReferenceLine } from '../outside/reference-line.ts';
import { tapeText } from '../outside/tape-words.ts';
import type { BlankColumn } from './blank-table.ts';
import type { LengthUnit } from './plan-input.ts';

/** How a place is taped from a line: along it and square to it, and by two tapes to check. @param squareShare share of the table's width. */
export const tapeColumns = (
  { a, b }: ReferenceLine,
  unit: LengthUnit,
  squareShare: number,
): BlankColumn<Offsets>[] => [
  {
    share: 22,
    head: [`from ${a.letter} along`, `the line to ${b.letter}`],
    text: ({ alongLine, backwards }) => `${tapeText(alongLine.tapeM, unit)}${backwards ? ' back' : ''}`,
  },
  {
    share: squareShare,
    head: ['then square', 'off the line'],
    text: ({ square, side }) => `${tapeText(square.tapeM, unit)} ${side}`,
  },
  {
    share: 19,
    head: ['check: tape', `from ${a.letter}`],
    text: ({ fromA }) => tapeText(fromA.tapeM, unit),
  },
  {
    share: 19,
    head: ['check: tape', `from ${b.letter}`],
    text: ({ fromB }) => tapeText(fromB.tapeM, unit),
  },
];
