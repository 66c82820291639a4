import type { Column } from './column-block.ts';
import { type LostRow, lostTable, periodWords } from './horizon-hours.ts';
import type { HorizonInput, HorizonPeriod } from './horizon-input.ts';
import { INK, RULE, SOFT_INK } from './inks.ts';
import type { Mark } from './page-model.ts';
import { cutToWidth, wrapToWidth } from './text-width.ts';

const HEAD_MM = 3.2;
const TEXT_MM = 2.6;
const ROW_MM = 4;
const PERIODS: readonly HorizonPeriod[] = ['month', 'season', 'year'];
const PERIOD_MM = 15;
/** The rows that always stand at the end: together, what reaches the spot, the open sky. */
const LAST_ROWS = 3;

/** Hours without decimals; under half an hour in words that do not say nothing is lost. */
export const hoursFigure = (hours: number): string =>
  hours > 0 && hours < 0.5 ? '< 1' : Math.round(hours).toLocaleString('en-GB');

/** The table of hours lost, as many rows as there is room for; what is left out is summed up in one row. */
export function horizonTable(input: HorizonInput, column: Column): Mark[] {
  const { xMm, yMm, widthMm, heightMm } = column;
  const { takers, together, got, open } = lostTable(input, 'season');
  const right = xMm + widthMm;
  const nameMm = widthMm - PERIODS.length * PERIOD_MM - 1;
  const heads = PERIODS.map((period) =>
    wrapToWidth(headOf(input, period).replace('–', '– '), TEXT_MM, PERIOD_MM - 1.5),
  );
  const headLines = Math.max(...heads.map((lines) => lines.length));
  const firstMm = yMm + 6 + headLines * 3.2;
  const room = Math.max(LAST_ROWS, Math.floor((yMm + heightMm - firstMm) / ROW_MM));
  const fitting = takers.length + LAST_ROWS <= room ? takers : takers.slice(0, room - LAST_ROWS - 1);
  const rest = takers.slice(fitting.length);
  const rows: LostRow[] = [
    ...fitting,
    ...(rest.length > 0 ? [sumRow(`${rest.length} more, each by itself`, rest)] : []),
    together,
    got,
    open,
  ];
  const text = (
    value: string,
    x: number,
    baseline: number,
    more: { bold?: boolean; ink?: string; anchor?: 'end'; sizeMm?: number } = {},
  ): Mark => ({ mark: 'text', atMm: [x, baseline], text: value, sizeMm: TEXT_MM, ink: INK, ...more });
  const rightOf = (period: number) => right - (PERIODS.length - 1 - period) * PERIOD_MM;
  const marks: Mark[] = [
    text('Hours of sun that each thing takes', xMm, yMm + HEAD_MM, { bold: true, sizeMm: HEAD_MM }),
  ];
  heads.forEach((lines, period) => {
    lines.forEach((line, i) => {
      const baseline = firstMm - 1.2 - (lines.length - 1 - i) * 3.2;
      marks.push(text(line, rightOf(period), baseline, { anchor: 'end', ink: SOFT_INK }));
    });
  });
  rows.forEach((row, i) => {
    const baseline = firstMm + i * ROW_MM + 2.9;
    const bold = row === got;
    marks.push({
      mark: 'line',
      pointsMm: [
        [xMm, baseline - 2.9],
        [right, baseline - 2.9],
      ],
      stroke: { ink: i === rows.length - LAST_ROWS + 1 ? INK : RULE, widthMm: 0.12 },
    });
    marks.push(text(cutToWidth(row.label, TEXT_MM, nameMm, bold), xMm, baseline, { bold }));
    PERIODS.forEach((period, k) => {
      marks.push(text(hoursFigure(row.hours[period]), rightOf(k), baseline, { bold, anchor: 'end' }));
    });
  });
  return marks;
}

/** What a column is of. */
export const headOf = (input: HorizonInput, period: HorizonPeriod): string =>
  period === 'year' ? 'year' : periodWords(input, period);

const sumRow = (label: string, rows: readonly LostRow[]): LostRow => {
  const sum = (period: HorizonPeriod) => rows.reduce((all, { hours }) => all + hours[period], 0);
  return { thing: null, label, hours: { month: sum('month'), season: sum('season'), year: sum('year') } };
};
