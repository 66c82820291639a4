import { INK, RULE, SOFT_INK } from './inks.ts';
import type { Mark } from './page-model.ts';
import { cutToWidth } from './text-width.ts';

export interface TableColumn {
  readonly head: string;
  readonly widthMm: number;
  /** Figures stand at the right of their column. */
  readonly figures?: boolean;
}
/** Size of its text. */
export const RULED_TEXT_MM = 2.7;
const ROW_MM = 4.4;
const HEAD_MM = 4.6;

/** Where a row starts under the table's top, and its height. */
export const ruledRowMm = (row: number): readonly [topMm: number, heightMm: number] => [
  HEAD_MM + row * ROW_MM,
  ROW_MM,
];

export const ruledTableHeightMm = (rows: number): number => HEAD_MM + rows * ROW_MM;

/** A table with a line above each row. A row in bold sums up. */
export function ruledTable(
  columns: readonly TableColumn[],
  rows: readonly { readonly cells: readonly string[]; readonly bold?: boolean }[],
  xMm: number,
  yMm: number,
): Mark[] {
  const right = xMm + columns.reduce((sum, { widthMm }) => sum + widthMm, 0);
  const marks: Mark[] = [];
  const line = (cells: readonly string[], baseline: number, ink: string, bold: boolean) => {
    let left = xMm;
    columns.forEach(({ widthMm, figures }, i) => {
      marks.push({
        mark: 'text',
        atMm: [figures ? left + widthMm : left, baseline],
        text: cutToWidth(cells[i] ?? '', RULED_TEXT_MM, widthMm - 0.5, bold),
        sizeMm: RULED_TEXT_MM,
        ink,
        bold,
        anchor: figures ? 'end' : 'start',
      });
      left += widthMm;
    });
  };
  line(
    columns.map(({ head }) => head),
    yMm + 3,
    SOFT_INK,
    false,
  );
  rows.forEach(({ cells, bold }, i) => {
    line(cells, yMm + HEAD_MM + i * ROW_MM + 3.1, INK, bold === true);
  });
  marks.push({
    mark: 'lines',
    linesMm: rows.map((_, i) => [
      [xMm, yMm + HEAD_MM + i * ROW_MM],
      [right, yMm + HEAD_MM + i * ROW_MM],
    ]),
    stroke: { ink: RULE, widthMm: 0.12 },
  });
  return marks;
}
