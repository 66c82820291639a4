import { INK, RULE, SOFT_INK } from './inks.ts';
import type { Mark } from './page-model.ts';
import { cutToWidth } from './text-width.ts';

export const BLANKS_HEAD_MM = 13;
export const BLANKS_ROW_MM = 7.6;
const TEXT_MM = 3.5;
const HEAD_TEXT_MM = 2.6;
const PAD_MM = 1;

/** A column of figures, or of room to write in. */
export interface BlankColumn<Row> {
  /** Share of the table's width. */
  readonly share: number;
  /** Up to two lines. */
  readonly head: readonly string[];
  /** What is printed; absent: room to write. */
  readonly text?: (row: Row) => string;
  readonly bold?: boolean;
}

/** What stands over the columns that are printed, and over those to write in. */
export interface BlankHeads {
  readonly printed: string;
  readonly toWrite: string;
}

/** Rows of figures with room to write what was found. */
export function drawBlankTable<Row>(
  columns: readonly BlankColumn<Row>[],
  heads: BlankHeads,
  rows: readonly Row[],
  box: { readonly xMm: number; readonly yMm: number; readonly widthMm: number },
): Mark[] {
  const { xMm, yMm, widthMm } = box;
  const right = xMm + widthMm;
  const bottom = yMm + BLANKS_HEAD_MM + rows.length * BLANKS_ROW_MM;
  const toWrite = columns.findIndex(({ text }) => !text);
  const allShares = columns.reduce((sum, { share }) => sum + share, 0);
  const edges = [xMm];
  for (const { share } of columns) edges.push(edges[edges.length - 1] + (share / allShares) * widthMm);
  const group = (text: string, x: number): Mark => ({
    mark: 'text',
    atMm: [x + PAD_MM, yMm + 3],
    text,
    sizeMm: HEAD_TEXT_MM,
    ink: INK,
    bold: true,
  });
  const marks: Mark[] = [group(heads.printed, xMm - PAD_MM), group(heads.toWrite, edges[toWrite])];
  columns.forEach((column, i) => {
    column.head.forEach((text, line) => {
      marks.push({
        mark: 'text',
        atMm: [edges[i] + (i === 0 ? 0 : PAD_MM), yMm + 7.2 + line * 3.2],
        text: cutToWidth(text, HEAD_TEXT_MM, edges[i + 1] - edges[i] - PAD_MM),
        sizeMm: HEAD_TEXT_MM,
        ink: SOFT_INK,
      });
    });
    rows.forEach((row, at) => {
      if (!column.text) return;
      marks.push({
        mark: 'text',
        atMm: [
          edges[i] + (i === 0 ? 0 : PAD_MM),
          yMm + BLANKS_HEAD_MM + at * BLANKS_ROW_MM + BLANKS_ROW_MM / 2 + TEXT_MM * 0.36,
        ],
        text: column.text(row),
        sizeMm: TEXT_MM,
        ink: INK,
        bold: column.bold,
      });
    });
  });
  const rules = Array.from({ length: rows.length + 1 }, (_, i) => yMm + BLANKS_HEAD_MM + i * BLANKS_ROW_MM);
  marks.push({
    mark: 'lines',
    linesMm: [
      ...rules.map((y) => [[xMm, y] as const, [right, y] as const]),
      ...edges.slice(toWrite).map((x) => [[x, yMm + BLANKS_HEAD_MM] as const, [x, bottom] as const]),
    ],
    stroke: { ink: RULE, widthMm: 0.2 },
  });
  return marks;
}
