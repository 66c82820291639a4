import { blurText, tapeText } from '../outside/tape-words.ts';
import type { Stake, StakePlan } from '../stakes/stake-plan.ts';
import type { BlankColumn, BlankHeads } from './blank-table.ts';
import type { LengthUnit } from './plan-input.ts';

export const STAKE_HEADS: BlankHeads = {
  printed: 'Where the stakes go',
  toWrite: 'What was seen, to be written in',
};

/** The stakes of a plan, with room to write what was seen. */
export const stakeColumns = ({ line }: StakePlan, unit: LengthUnit): BlankColumn<Stake>[] => [
  { share: 7, head: ['no.'], text: ({ number }) => String(number), bold: true },
  { share: 12, head: ['clock'], text: ({ time }) => time, bold: true },
  {
    share: 22,
    head: [`from ${line.a.letter} along`, `the line to ${line.b.letter}`],
    text: ({ alongLine, backwards }) => `${tapeText(alongLine.tapeM, unit)}${backwards ? ' back' : ''}`,
  },
  {
    share: 26,
    head: ['then square', 'off the line'],
    text: ({ square, side }) => `${tapeText(square.tapeM, unit)} ${side}`,
  },
  {
    share: 19,
    head: ['check: tape', `from ${line.a.letter}`],
    text: ({ fromA }) => tapeText(fromA.tapeM, unit),
  },
  {
    share: 19,
    head: ['check: tape', `from ${line.b.letter}`],
    text: ({ fromB }) => tapeText(fromB.tapeM, unit),
  },
  {
    share: 15,
    head: ['tip fades', 'over'],
    text: ({ fuzzyM }) => (Number.isFinite(fuzzyM) ? blurText(2 * fuzzyM, unit) : 'far'),
  },
  { share: 16, head: ['seen at', '(clock)'] },
  { share: 27, head: ['tip beyond (+)', 'or short (−)'] },
  { share: 27, head: ['right (+)', 'or left (−)'] },
];
