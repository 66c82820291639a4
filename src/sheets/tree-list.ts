import type { Column } from './column-block.ts';
import { INK, RULE, SOFT_INK } from './inks.ts';
import { M_PER_FOOT } from './map-scale.ts';
import type { Mark } from './page-model.ts';
import type { LengthUnit, PlanTree } from './plan-input.ts';
import { cutToWidth } from './text-width.ts';

const ROW_MM = 3.9;
const HEAD_MM = 12;
const TEXT_MM = 2.5;
const TAG_WIDTH_MM = 8;
const SIZE_WIDTH_MM = 15.5;

/** Rows of the list that a column of this height takes. */
export const rowsThatFit = (heightMm: number): number =>
  Math.max(0, Math.floor((heightMm - HEAD_MM) / ROW_MM));

/** "8.2 × 6.1", height and spread in the list's unit; a dash while the tree is not there. */
function sizeText(size: PlanTree['now'], unit: LengthUnit): string {
  if (!size) return '–';
  const figure = (metres: number) =>
    unit === 'm' ? metres.toFixed(1) : (metres / M_PER_FOOT).toFixed(metres < 3 ? 1 : 0);
  return `${figure(size.heightM)} × ${figure(size.spreadM)}`;
}

/** Rows of trees in one column: tag, name, height × spread now and in the plan's year. */
export function drawTreeList(
  trees: readonly PlanTree[],
  column: Column,
  words: { year: number; unit: LengthUnit; continued: boolean },
): Mark[] {
  const { xMm, yMm, widthMm } = column;
  const right = xMm + widthMm;
  const text = (
    value: string,
    x: number,
    baseline: number,
    more: { bold?: boolean; ink?: string; anchor?: 'end'; sizeMm?: number } = {},
  ): Mark => ({ mark: 'text', atMm: [x, baseline], text: value, sizeMm: TEXT_MM, ink: INK, ...more });
  const marks: Mark[] = [
    text(words.continued ? 'Trees, continued' : 'Trees', xMm, yMm + 3.2, { bold: true, sizeMm: 3.2 }),
    text(`height × spread, ${words.unit}`, right, yMm + 7, { anchor: 'end', ink: SOFT_INK }),
    text('now', right - SIZE_WIDTH_MM, yMm + 10.4, { anchor: 'end', ink: SOFT_INK }),
    text(`year ${words.year}`, right, yMm + 10.4, { anchor: 'end', ink: SOFT_INK }),
  ];
  trees.forEach((tree, row) => {
    const baseline = yMm + HEAD_MM + row * ROW_MM + 2.8;
    const nameWidthMm = widthMm - TAG_WIDTH_MM - 2 * SIZE_WIDTH_MM;
    marks.push(
      {
        mark: 'line',
        pointsMm: [
          [xMm, baseline - 3],
          [right, baseline - 3],
        ],
        stroke: { ink: RULE, widthMm: 0.1 },
      },
      text(cutToWidth(tree.tag, TEXT_MM, TAG_WIDTH_MM - 1, true), xMm, baseline, { bold: true }),
      text(cutToWidth(tree.name, TEXT_MM, nameWidthMm), xMm + TAG_WIDTH_MM, baseline),
      text(sizeText(tree.now, words.unit), right - SIZE_WIDTH_MM, baseline, { anchor: 'end' }),
      text(sizeText(tree.inYear, words.unit), right, baseline, { anchor: 'end' }),
    );
  });
  return marks;
}
