import { blurText } from '../outside/tape-words.ts';
import type { Stake, StakePlan } from '../stakes/stake-plan.ts';
import type { BlankColumn, BlankHeads } from './blank-table.ts';
import type { LengthUnit } from './plan-input.ts';
import { tapeColumns } from './tape-columns.ts';

export const STAKE_HEADS: BlankHeads = {
  printed: 'Where the stakes go',
  toWrite: 'What was seen, to be written in',
};

/** The stakes of a plan, with room to write what was seen. */
export const stakeColumns = ({ line }: StakePlan, unit: LengthUnit): BlankColumn<Stake>[] => [
  { share: 7, head: ['no.'], text: ({ number }) => String(number), bold: true },
  { share: 12, head: ['clock'], text: ({ time }) => time, bold: true },
  ...tapeColumns(line, unit, 26),
  {
    share: 15,
    head: ['tip fades', 'over'],
    text: ({ fuzzyM }) => (Number.isFinite(fuzzyM) ? blurText(2 * fuzzyM, unit) : 'far'),
  },
  { share: 16, head: ['seen at', '(clock)'] },
  { share: 27, head: ['tip beyond (+)', 'or short (−)'] },
  { share: 27, head: ['right (+)', 'or left (−)'] },
];
