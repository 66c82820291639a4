import { blurText, tapeText } from '../outside/tape-words.ts';
import type { Stake, StakePlan } from '../stakes/stake-plan.ts';
import { INK, RULE, SOFT_INK } from './inks.ts';
import type { Mark } from './page-model.ts';
import type { LengthUnit } from './plan-input.ts';
import { cutToWidth } from './text-width.ts';

export const STAKES_HEAD_MM = 13;
export const STAKES_ROW_MM = 7.6;
const TEXT_MM = 3.5;
const HEAD_TEXT_MM = 2.6;
const PAD_MM = 1;

interface StakeColumn {
  /** Share of the table's width. */
  readonly share: number;
  /** Up to three lines. */
  readonly head: (plan: StakePlan) => readonly string[];
  /** What is printed; absent: room to write. */
  readonly text?: (stake: Stake, unit: LengthUnit) => string;
  readonly bold?: boolean;
}

const COLUMNS: readonly StakeColumn[] = [
  { share: 7, head: () => ['no.'], text: ({ number }) => String(number), bold: true },
  { share: 12, head: () => ['clock'], text: ({ time }) => time, bold: true },
  {
    share: 22,
    head: ({ line }) => [`from ${line.a.letter} along`, `the line to ${line.b.letter}`],
    text: ({ alongLine, backwards }, unit) => `${tapeText(alongLine.tapeM, unit)}${backwards ? ' back' : ''}`,
  },
  {
    share: 26,
    head: () => ['then square', 'off the line'],
    text: ({ square, side }, unit) => `${tapeText(square.tapeM, unit)} ${side}`,
  },
  {
    share: 19,
    head: ({ line }) => ['check: tape', `from ${line.a.letter}`],
    text: ({ fromA }, unit) => tapeText(fromA.tapeM, unit),
  },
  {
    share: 19,
    head: ({ line }) => ['check: tape', `from ${line.b.letter}`],
    text: ({ fromB }, unit) => tapeText(fromB.tapeM, unit),
  },
  {
    share: 15,
    head: () => ['tip fades', 'over'],
    text: ({ fuzzyM }, unit) => (Number.isFinite(fuzzyM) ? blurText(2 * fuzzyM, unit) : 'far'),
  },
  { share: 16, head: () => ['seen at', '(clock)'] },
  { share: 27, head: () => ['tip beyond (+)', 'or short (−)'] },
  { share: 27, head: () => ['right (+)', 'or left (−)'] },
];
const ALL_SHARES = COLUMNS.reduce((sum, { share }) => sum + share, 0);

/** Rows of stakes with room to write what was seen. */
export function drawStakesTable(
  plan: StakePlan,
  stakes: readonly Stake[],
  box: { readonly xMm: number; readonly yMm: number; readonly widthMm: number },
  unit: LengthUnit,
): Mark[] {
  const { xMm, yMm, widthMm } = box;
  const right = xMm + widthMm;
  const bottom = yMm + STAKES_HEAD_MM + stakes.length * STAKES_ROW_MM;
  const toWrite = COLUMNS.findIndex(({ text }) => !text);
  const edges = [xMm];
  for (const { share } of COLUMNS) edges.push(edges[edges.length - 1] + (share / ALL_SHARES) * widthMm);
  const group = (text: string, x: number): Mark => ({
    mark: 'text',
    atMm: [x + PAD_MM, yMm + 3],
    text,
    sizeMm: HEAD_TEXT_MM,
    ink: INK,
    bold: true,
  });
  const marks: Mark[] = [
    group('Where the stakes go', xMm - PAD_MM),
    group('What was seen, to be written in', edges[toWrite]),
  ];
  COLUMNS.forEach((column, i) => {
    column.head(plan).forEach((text, row) => {
      marks.push({
        mark: 'text',
        atMm: [edges[i] + (i === 0 ? 0 : PAD_MM), yMm + 7.2 + row * 3.2],
        text: cutToWidth(text, HEAD_TEXT_MM, edges[i + 1] - edges[i] - PAD_MM),
        sizeMm: HEAD_TEXT_MM,
        ink: SOFT_INK,
      });
    });
    stakes.forEach((stake, row) => {
      if (!column.text) return;
      marks.push({
        mark: 'text',
        atMm: [
          edges[i] + (i === 0 ? 0 : PAD_MM),
          yMm + STAKES_HEAD_MM + row * STAKES_ROW_MM + STAKES_ROW_MM / 2 + TEXT_MM * 0.36,
        ],
        text: column.text(stake, unit),
        sizeMm: TEXT_MM,
        ink: INK,
        bold: column.bold,
      });
    });
  });
  const rows = Array.from({ length: stakes.length + 1 }, (_, i) => yMm + STAKES_HEAD_MM + i * STAKES_ROW_MM);
  marks.push({
    mark: 'lines',
    linesMm: [
      ...rows.map((y) => [[xMm, y] as const, [right, y] as const]),
      ...edges.slice(toWrite).map((x) => [[x, yMm + STAKES_HEAD_MM] as const, [x, bottom] as const]),
    ],
    stroke: { ink: RULE, widthMm: 0.2 },
  });
  return marks;
}
