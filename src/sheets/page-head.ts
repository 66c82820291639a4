import { INK, RULE, SOFT_INK } from './inks.ts';
import type { Mark } from './page-model.ts';
import { MARGIN_MM } from './paper.ts';
import { cutToWidth } from './text-width.ts';

const TITLE_MM = 6.2;
/** Room for the date beside the title. */
const DATE_MM = 45;
/** What stands under the title: fine over maps and strips, broad over what is read at arm's length. */
const UNDER = {
  fine: { textMm: 3.5, baselineMm: 10.8, ruleMm: 13 },
  broad: { textMm: 3.7, baselineMm: 11.2, ruleMm: 13.6 },
} as const;

/** What stands at the head of a page. */
export interface PageHead {
  readonly title: string;
  /** One line under the title. */
  readonly under: string;
  /** When it was made, as it is to be printed. */
  readonly made: string;
  /** 1 for the first page, on which no number stands. */
  readonly page: number;
  readonly text: keyof typeof UNDER;
}

/** Title, date, one line under them and a rule. @param innerMm width between the margins. */
export function pageHead({ title, under, made, page, text }: PageHead, innerMm: number): Mark[] {
  const right = MARGIN_MM + innerMm;
  const { textMm, baselineMm, ruleMm } = UNDER[text];
  return [
    {
      mark: 'text',
      atMm: [MARGIN_MM, MARGIN_MM + 5.5],
      text: cutToWidth(title, TITLE_MM, innerMm - DATE_MM, true),
      sizeMm: TITLE_MM,
      bold: true,
      ink: INK,
    },
    {
      mark: 'text',
      atMm: [MARGIN_MM, MARGIN_MM + baselineMm],
      text: cutToWidth(under, textMm, innerMm),
      sizeMm: textMm,
      ink: INK,
    },
    {
      mark: 'text',
      atMm: [right, MARGIN_MM + 4],
      text: page === 1 ? made : `${made}, page ${page}`,
      sizeMm: 2.8,
      ink: SOFT_INK,
      anchor: 'end',
    },
    {
      mark: 'line',
      pointsMm: [
        [MARGIN_MM, MARGIN_MM + ruleMm],
        [right, MARGIN_MM + ruleMm],
      ],
      stroke: { ink: RULE, widthMm: 0.2 },
    },
  ];
}
