import {
  BLANKS_HEAD_MM,
  BLANKS_ROW_MM,
  type BlankColumn,
  type BlankHeads,
  drawBlankTable,
} from './blank-table.ts';
import { type Column, type ColumnBlock, fillColumns } from './column-block.ts';
import { textLines } from './draw-legend.ts';
import { scaleAndNorth } from './draw-scale-north.ts';
import { INK } from './inks.ts';
import type { OutdoorPageInput } from './outdoor-input.ts';
import { drawSketchedPlaces, outdoorSketch, type Sketched } from './outdoor-sketch.ts';
import { type PageHead, pageHead } from './page-head.ts';
import type { Mark, PageModel } from './page-model.ts';
import { MARGIN_MM, pageSizeMm } from './paper.ts';
import { wrapToWidth } from './text-width.ts';

const HEADER_MM = 16;
const MAP_MM = 98;
const SIDE_MM = 57;
const GAP_MM = 4;
const HEAD_MM = 3.2;
const TEXT_MM = 2.8;
const STEP_MM = 3.7;
const CAUTION_MM = 2.7;
const CAUTION_STEP_MM = 3.5;

/** A heading and what stands under it. */
export type Paragraphs = readonly [head: string, texts: readonly string[]];

interface Head {
  readonly input: OutdoorPageInput;
  readonly title: string;
  /** One line under the title. */
  readonly under: string;
}

/** What a page that is taken outside with a tape says. */
export interface OutdoorPage<Row> extends Head {
  readonly sketched: Sketched;
  /** Beside the sketch. */
  readonly beside: readonly Paragraphs[];
  readonly columns: readonly BlankColumn<Row>[];
  readonly heads: BlankHeads;
  readonly rows: readonly Row[];
  /** Below the rows; those without a text are left out. */
  readonly notes: readonly Paragraphs[];
  /** At the foot of every page. */
  readonly cautions: readonly string[];
}

/** Sketch, rows with room to write, how to do it and what to mind, over as many pages as it takes. */
export function outdoorPages<Row>(page: OutdoorPage<Row>): PageModel[] {
  const { input, title } = page;
  const { widthMm, heightMm } = pageSizeMm(input.paper, 'portrait');
  const innerMm = widthMm - 2 * MARGIN_MM;
  const cautions = page.cautions.flatMap((caution) => wrapToWidth(caution, CAUTION_MM, innerMm));
  const footerMm = cautions.length * CAUTION_STEP_MM + 3;
  const topMm = MARGIN_MM + HEADER_MM;
  const endMm = heightMm - MARGIN_MM - footerMm;
  const pageOf = (marks: readonly Mark[], number: number): PageModel => ({
    title,
    widthMm,
    heightMm,
    marks: [
      ...marks,
      ...pageHead(headOf(page, number), innerMm),
      ...textLines(cautions, MARGIN_MM, endMm + 3, CAUTION_MM, CAUTION_STEP_MM, false, INK),
    ],
  });

  const sketch = outdoorSketch(input, page.sketched);
  const { marks: map, placement } = drawSketchedPlaces(sketch, page.sketched, {
    xMm: MARGIN_MM,
    yMm: topMm,
    widthMm: innerMm - SIDE_MM - GAP_MM,
    heightMm: MAP_MM,
  });
  const beside = fillColumns(
    [
      scaleAndNorth(sketch, placement, SIDE_MM),
      ...page.beside.map(([head, texts]) => paragraphs(head, texts, SIDE_MM)),
    ],
    [{ xMm: MARGIN_MM + innerMm - SIDE_MM, yMm: topMm, widthMm: SIDE_MM, heightMm: MAP_MM }],
  );

  const halfMm = (innerMm - 2 * GAP_MM) / 2;
  const notes = page.notes
    .filter(([, texts]) => texts.length > 0)
    .map(([head, texts]) => paragraphs(head, texts, halfMm));
  let blocks: readonly ColumnBlock[] = [...beside.left, ...notes];
  let { rows } = page;
  let yMm = topMm + MAP_MM + GAP_MM;
  let marks: Mark[] = [...map, ...beside.marks];
  const pages: PageModel[] = [];
  while (true) {
    const count = Math.min(rows.length, Math.floor((endMm - yMm - BLANKS_HEAD_MM) / BLANKS_ROW_MM));
    if (count > 0) {
      const table = { xMm: MARGIN_MM, yMm, widthMm: innerMm };
      marks.push(...drawBlankTable(page.columns, page.heads, rows.slice(0, count), table));
      rows = rows.slice(count);
      yMm += BLANKS_HEAD_MM + count * BLANKS_ROW_MM + GAP_MM;
    }
    if (rows.length === 0) {
      const placed = setInTwo(blocks, yMm, Math.max(0, endMm - yMm), halfMm);
      marks.push(...placed.marks);
      // A block taller than a page cannot be set; nothing more is gained by another page.
      const stuck = placed.left.length === blocks.length && yMm === topMm;
      blocks = stuck ? [] : placed.left;
    }
    pages.push(pageOf(marks, pages.length + 1));
    if (rows.length === 0 && blocks.length === 0) return pages;
    marks = [];
    yMm = topMm;
  }
}

/** Each caution once, with the numbers of the places it is of; `what` is what they are called, "Stake". */
export function gatheredCautions(
  places: readonly { readonly number: number; readonly cautions: readonly string[] }[],
  what: string,
): string[] {
  const numbers = new Map<string, number[]>();
  for (const { cautions, number } of places)
    for (const caution of cautions) numbers.set(caution, [...(numbers.get(caution) ?? []), number]);
  return [...numbers].map(([caution, which]) =>
    which.length === places.length && which.length > 1
      ? `All ${what.toLowerCase()}s: ${caution}.`
      : `${what} ${which.join(', ')}: ${caution}.`,
  );
}

/** Sets blocks into two columns of one length, no longer than they need. */
function setInTwo(blocks: readonly ColumnBlock[], yMm: number, roomMm: number, widthMm: number) {
  const columns = (heightMm: number) =>
    [MARGIN_MM, MARGIN_MM + widthMm + 2 * GAP_MM].map((xMm): Column => ({ xMm, yMm, widthMm, heightMm }));
  for (let heightMm = STEP_MM; heightMm < roomMm; heightMm += STEP_MM) {
    const placed = fillColumns(blocks, columns(heightMm));
    if (placed.left.length === 0) return placed;
  }
  return fillColumns(blocks, columns(roomMm));
}

function paragraphs(head: string, texts: readonly string[], widthMm: number): ColumnBlock {
  const lines = texts.flatMap((text) => wrapToWidth(text, TEXT_MM, widthMm));
  return {
    heightMm: HEAD_MM + 1.6 + lines.length * STEP_MM,
    draw: (xMm, yMm) => [
      ...textLines([head], xMm, yMm, HEAD_MM, 4, true),
      ...textLines(lines, xMm, yMm + HEAD_MM + 1.6, TEXT_MM, STEP_MM),
    ],
  };
}

function headOf({ title, input, under }: Head, page: number): PageHead {
  const where = input.layoutName ? `${input.siteName}, ${input.layoutName}` : input.siteName;
  return { title, under: `${under}. ${where}`, made: `made ${input.madeOn}`, page, text: 'broad' };
}
