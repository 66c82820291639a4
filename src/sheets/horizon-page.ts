import { textLines } from './draw-legend.ts';
import { altitudeAxis, COMPASS_LINES, compassAxis } from './horizon-axes.ts';
import { gotSentence, HOURS_EXPLAINED, takesSentence } from './horizon-hours.ts';
import type { HorizonPageInput } from './horizon-input.ts';
import { horizonKey } from './horizon-key.ts';
import type { StripSizes } from './horizon-scale.ts';
import { lengthWords } from './horizon-scale.ts';
import { drawStrip, stripTopDeg } from './horizon-strip.ts';
import { horizonTable } from './horizon-table.ts';
import { HOW_SURE, howToCompare, NEVER_LOOK, placeInWords } from './horizon-texts.ts';
import { CLAY, SOFT_INK } from './inks.ts';
import { type PageHead, pageHead } from './page-head.ts';
import type { Mark, PageModel } from './page-model.ts';
import { MARGIN_MM, pageSizeMm } from './paper.ts';
import { cutToWidth, wrapToWidth } from './text-width.ts';

const HEADER_MM = 15;
const ANSWER_MM = 11;
/** Room for degrees and fists beside the strip. */
const AXIS_MM = 11;
const GAP_MM = 6;
const TEXT_MM = 2.6;
const STEP_MM = 3.4;
const SMALL_MM = 2.4;
const SMALL_STEP_MM = 3.1;

/**
 * The horizon from a spot on one sheet that lies across: the strip at one scale along and up, how to find the spot and
 * to compare what is seen there, the key, and the hours of sun that each thing takes.
 */
export function horizonPage(input: HorizonPageInput): PageModel {
  const { widthMm, heightMm } = pageSizeMm(input.paper, 'landscape');
  const innerMm = widthMm - 2 * MARGIN_MM;
  const perDeg = (innerMm - 2 * AXIS_MM) / 360;
  const sizes: StripSizes = { perDeg, text: Math.min(3, 3.3 * perDeg), pen: 0.12 };
  const topDeg = stripTopDeg(input.view);
  const left = MARGIN_MM + AXIS_MM;
  const top = MARGIN_MM + HEADER_MM + ANSWER_MM;
  const under = top + topDeg * perDeg;

  const warning = wrapToWidth(NEVER_LOOK, TEXT_MM, innerMm, true);
  const sure = wrapToWidth(
    [HOW_SURE, ...input.assumed.map((each) => `Assumed: ${each}.`)].join(' '),
    SMALL_MM,
    innerMm,
  );
  const footMm = heightMm - MARGIN_MM - warning.length * STEP_MM - sure.length * SMALL_STEP_MM - 1;

  const bodyMm = under + sizes.text * COMPASS_LINES + GAP_MM;
  const columnMm = (innerMm - 2 * GAP_MM) / 3;
  const columnAt = (i: number) => MARGIN_MM + i * (columnMm + GAP_MM);
  const title = `${input.siteName}, horizon from here`;
  return {
    title,
    widthMm,
    heightMm,
    marks: [
      ...pageHead(headOf(title, input), innerMm),
      ...textLines(
        [cutToWidth(takesSentence(input, 'season'), 4.4, innerMm, true)],
        MARGIN_MM,
        MARGIN_MM + HEADER_MM - 0.5,
        4.4,
        0,
        true,
      ),
      ...textLines(
        [cutToWidth(gotSentence(input, 'season'), 3, innerMm)],
        MARGIN_MM,
        MARGIN_MM + HEADER_MM + 5,
        3,
        0,
      ),
      ...drawStrip(input, topDeg, sizes, { left, top }),
      ...altitudeAxis(topDeg, sizes, { x: left - 1.2, top, anchor: 'end' }),
      ...altitudeAxis(topDeg, sizes, { x: left + 360 * perDeg + 1.2, top, anchor: 'start' }),
      ...compassAxis(input.declinationDeg, sizes, left, under),
      ...paragraphs(
        [
          { head: 'Stand on the spot', sentences: [placeInWords(input), ...input.findIt] },
          { head: 'Compare', sentences: howToCompare(input) },
        ],
        columnAt(0),
        bodyMm,
        columnMm,
      ),
      ...horizonKey(input, columnMm).draw(columnAt(1), bodyMm),
      ...tableColumn(input, columnAt(2), bodyMm, columnMm, footMm - bodyMm - 2),
      ...textLines(warning, MARGIN_MM, footMm, TEXT_MM, STEP_MM, true, CLAY),
      ...textLines(
        sure,
        MARGIN_MM,
        footMm + warning.length * STEP_MM + 0.6,
        SMALL_MM,
        SMALL_STEP_MM,
        false,
        SOFT_INK,
      ),
    ],
  };
}

/** The table with what its figures mean beneath. */
function tableColumn(
  input: HorizonPageInput,
  xMm: number,
  yMm: number,
  widthMm: number,
  heightMm: number,
): Mark[] {
  const explained = wrapToWidth(HOURS_EXPLAINED, SMALL_MM, widthMm);
  const explainedMm = explained.length * SMALL_STEP_MM + 1;
  return [
    ...horizonTable(input, { xMm, yMm, widthMm, heightMm: heightMm - explainedMm }),
    ...textLines(explained, xMm, yMm + heightMm - explainedMm + 1, SMALL_MM, SMALL_STEP_MM, false, SOFT_INK),
  ];
}

function paragraphs(
  parts: readonly { head: string; sentences: readonly string[] }[],
  xMm: number,
  yMm: number,
  widthMm: number,
): Mark[] {
  const marks: Mark[] = [];
  let y = yMm;
  for (const { head, sentences } of parts) {
    marks.push(...textLines([head], xMm, y, 3.2, 0, true));
    y += 5;
    for (const sentence of sentences) {
      const lines = wrapToWidth(sentence, TEXT_MM, widthMm);
      marks.push(...textLines(lines, xMm, y, TEXT_MM, STEP_MM));
      y += lines.length * STEP_MM + 0.8;
    }
    y += 1.6;
  }
  return marks;
}

function headOf(title: string, input: HorizonPageInput): PageHead {
  const detail = [
    `seen from ${lengthWords(input.view.readingHeightM, input.unit)} above the ground`,
    `year ${input.year} after planting (season of ${input.calendarYear})`,
    ...(input.layoutName ? [`layout ${input.layoutName}`] : []),
  ].join(', ');
  const under = detail[0].toUpperCase() + detail.slice(1);
  return { title, under, made: input.date, page: 1, text: 'fine' };
}
