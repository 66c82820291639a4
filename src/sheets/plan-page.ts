import { BadInputError } from '../units/bad-input.ts';
import { type Column, type ColumnBlock, fillColumns } from './column-block.ts';
import { bandLegend, signLegend, textLines } from './draw-legend.ts';
import { drawMap } from './draw-map.ts';
import { scaleAndNorth } from './draw-scale-north.ts';
import { SOFT_INK } from './inks.ts';
import { placeMap } from './map-placement.ts';
import { type PageHead, pageHead } from './page-head.ts';
import type { BoxMm, Mark, PageModel } from './page-model.ts';
import { MARGIN_MM, pageSizeMm } from './paper.ts';
import type { PlanPageInput, PlanTree } from './plan-input.ts';
import { wrapToWidth } from './text-width.ts';
import { drawTreeList, rowsThatFit } from './tree-list.ts';

const HEADER_MM = 15;
const CAUTION_MM = 2.4;
const CAUTION_STEP_MM = 3.1;
/** Column beside the map (landscape); height of the strip below it (portrait). */
const SIDE_MM = 72;
const STRIP_MM = 78;
const GAP_MM = 5;
const FEWEST_ROWS = 4;

/**
 * The plan on paper: the map to a true scale with what a reader needs to use it outside, and the list of trees, which
 * goes on over further pages where it is long. The first page is the map.
 */
export function planPages(input: PlanPageInput): PageModel[] {
  if (input.scale !== 'fit' && !(input.scale > 0 && Number.isFinite(input.scale)))
    throw new BadInputError(`The scale 1 : ${input.scale} cannot be drawn: a number above 0 is expected.`);
  const { widthMm, heightMm } = pageSizeMm(input.paper, input.orientation);
  const innerMm = widthMm - 2 * MARGIN_MM;
  const cautions = input.cautions.flatMap((caution) => wrapToWidth(caution, CAUTION_MM, innerMm));
  const footerMm = cautions.length * CAUTION_STEP_MM + 2;
  const topMm = MARGIN_MM + HEADER_MM;
  const bodyMm = heightMm - topMm - MARGIN_MM - footerMm;

  const { mapBox, columns } = bodyLayout(input.orientation, innerMm, topMm, bodyMm);
  const placement = placeMap(input, mapBox);
  const columnMm = columns[0].widthMm;
  const blocks = [
    scaleAndNorth(input, placement, columnMm),
    bandLegend(input, columnMm),
    signLegend(input, columnMm),
  ].filter((block): block is ColumnBlock => block !== null);
  const { marks, free, left } = fillColumns(blocks, columns);

  const title = input.layoutName ? `${input.siteName}, ${input.layoutName}` : input.siteName;
  const frameMarks = (pageNumber: number): Mark[] => [
    ...pageHead(headOf(title, input, pageNumber), innerMm),
    ...textLines(
      cautions,
      MARGIN_MM,
      heightMm - MARGIN_MM - footerMm + 2,
      CAUTION_MM,
      CAUTION_STEP_MM,
      false,
      SOFT_INK,
    ),
  ];

  const trees = [...input.trees].sort((a, b) => a.tag.localeCompare(b.tag, 'en', { numeric: true }));
  const besideMap = left.length === 0 ? setList(trees, free, input, false) : { marks: [], rest: trees };
  const pages: PageModel[] = [
    {
      title,
      widthMm,
      heightMm,
      marks: [...drawMap(input, placement), ...marks, ...besideMap.marks, ...frameMarks(1)],
    },
  ];

  let blocksLeft = left;
  let rest = besideMap.rest;
  while (rest.length > 0 || blocksLeft.length > 0) {
    const fullColumns = listColumns(innerMm, topMm, bodyMm);
    const placed = fillColumns(blocksLeft, fullColumns);
    const list = setList(rest, placed.free, input, rest.length < trees.length);
    // A block taller than a page cannot be set; nothing more is gained by another page.
    if (placed.left.length === blocksLeft.length && list.rest.length === rest.length) break;
    pages.push({
      title,
      widthMm,
      heightMm,
      marks: [...placed.marks, ...list.marks, ...frameMarks(pages.length + 1)],
    });
    blocksLeft = placed.left;
    rest = list.rest;
  }
  return pages;
}

/** Where the map and the columns of the legend lie. */
function bodyLayout(
  orientation: PlanPageInput['orientation'],
  innerMm: number,
  topMm: number,
  bodyMm: number,
): { mapBox: BoxMm; columns: Column[] } {
  if (orientation === 'landscape') {
    const mapMm = innerMm - SIDE_MM - GAP_MM;
    return {
      mapBox: { xMm: MARGIN_MM, yMm: topMm, widthMm: mapMm, heightMm: bodyMm },
      columns: [{ xMm: MARGIN_MM + mapMm + GAP_MM, yMm: topMm, widthMm: SIDE_MM, heightMm: bodyMm }],
    };
  }
  const count = Math.floor((innerMm + GAP_MM) / (59 + GAP_MM));
  const columnMm = (innerMm - (count - 1) * GAP_MM) / count;
  return {
    mapBox: { xMm: MARGIN_MM, yMm: topMm, widthMm: innerMm, heightMm: bodyMm - STRIP_MM - GAP_MM },
    columns: Array.from({ length: count }, (_, i) => ({
      xMm: MARGIN_MM + i * (columnMm + GAP_MM),
      yMm: topMm + bodyMm - STRIP_MM,
      widthMm: columnMm,
      heightMm: STRIP_MM,
    })),
  };
}

/** The columns of a page that holds only lists. */
function listColumns(innerMm: number, topMm: number, bodyMm: number): Column[] {
  const count = Math.floor((innerMm + GAP_MM) / (85 + GAP_MM));
  const columnMm = (innerMm - (count - 1) * GAP_MM) / count;
  return Array.from({ length: count }, (_, i) => ({
    xMm: MARGIN_MM + i * (columnMm + GAP_MM),
    yMm: topMm,
    widthMm: columnMm,
    heightMm: bodyMm,
  }));
}

/** Sets as many rows as the columns take, leaving out a column in which only a few would stand. */
function setList(
  trees: readonly PlanTree[],
  columns: readonly Column[],
  input: PlanPageInput,
  continued: boolean,
): { marks: Mark[]; rest: readonly PlanTree[] } {
  const marks: Mark[] = [];
  let rest = trees;
  for (const column of columns) {
    const rows = Math.min(rowsThatFit(column.heightMm), rest.length);
    if (rows === 0 || (rows < rest.length && rows < FEWEST_ROWS)) continue;
    marks.push(
      ...drawTreeList(rest.slice(0, rows), column, {
        year: input.year,
        unit: input.unit,
        continued: continued || rest.length < trees.length,
      }),
    );
    rest = rest.slice(rows);
  }
  return { marks, rest };
}

function headOf(title: string, input: PlanPageInput, page: number): PageHead {
  const picture = input.bandMap ? `${input.bandMap.bands.quantity}, ${input.bandMap.detail}` : 'Plan';
  const year = `year ${input.year} after planting (season of ${input.calendarYear})`;
  return { title, under: `${picture}, ${year}`, made: input.date, page, text: 'fine' };
}
