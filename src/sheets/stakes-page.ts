import { lineWords } from '../outside/tape-words.ts';
import type { StakePlan } from '../stakes/stake-plan.ts';
import { takenForGranted } from '../stakes/stake-words.ts';
import { type Column, type ColumnBlock, fillColumns } from './column-block.ts';
import { textLines } from './draw-legend.ts';
import { scaleAndNorth } from './draw-scale-north.ts';
import { INK, RULE, SOFT_INK } from './inks.ts';
import type { Mark, PageModel } from './page-model.ts';
import { MARGIN_MM, pageSizeMm } from './paper.ts';
import type { StakesPageInput } from './stakes-input.ts';
import { drawStakesMap, stakesSketch } from './stakes-map.ts';
import { drawStakesTable, STAKES_HEAD_MM, STAKES_ROW_MM } from './stakes-table.ts';
import { cutToWidth, wrapToWidth } from './text-width.ts';

const HEADER_MM = 16;
const MAP_MM = 98;
const SIDE_MM = 57;
const GAP_MM = 4;
const HEAD_MM = 3.2;
const TEXT_MM = 2.8;
const STEP_MM = 3.7;
const CAUTION_MM = 2.7;
const CAUTION_STEP_MM = 3.5;

const CAUTIONS = [
  'Never look at the sun, not even for a moment and not through a level, sight or camera: watch the ground. Look for ditches, edges, live fences, machines and animals before you walk with a tape.',
  'Near overhead lines raise no pole and no steel tape; where something may be buried lay a marker and drive nothing in. In wind stay out from under the trees.',
];

/** The page of shadow stakes to take outside: sketch, offsets, room to write, how to do it, what it takes for granted. */
export function stakesPages(input: StakesPageInput): PageModel[] {
  const { plan } = input;
  const { widthMm, heightMm } = pageSizeMm(input.paper, 'portrait');
  const innerMm = widthMm - 2 * MARGIN_MM;
  const cautions = CAUTIONS.flatMap((caution) => wrapToWidth(caution, CAUTION_MM, innerMm));
  const footerMm = cautions.length * CAUTION_STEP_MM + 3;
  const topMm = MARGIN_MM + HEADER_MM;
  const endMm = heightMm - MARGIN_MM - footerMm;
  const title = `Shadow stakes: ${plan.thing.label}`;
  const pageOf = (marks: readonly Mark[], number: number): PageModel => ({
    title,
    widthMm,
    heightMm,
    marks: [
      ...marks,
      ...header(title, input, innerMm, number),
      ...textLines(cautions, MARGIN_MM, endMm + 3, CAUTION_MM, CAUTION_STEP_MM, false, INK),
    ],
  });

  const sketch = stakesSketch(input);
  const { marks: map, placement } = drawStakesMap(input, sketch, {
    xMm: MARGIN_MM,
    yMm: topMm,
    widthMm: innerMm - SIDE_MM - GAP_MM,
    heightMm: MAP_MM,
  });
  const beside = fillColumns(
    [
      scaleAndNorth(sketch, placement, SIDE_MM),
      paragraphs('The line to tape from', [lineWords(plan.line, input.unit)], SIDE_MM),
      paragraphs('Taken for granted', takenForGranted(plan, input.ground, input.unit), SIDE_MM),
    ],
    [{ xMm: MARGIN_MM + innerMm - SIDE_MM, yMm: topMm, widthMm: SIDE_MM, heightMm: MAP_MM }],
  );

  const halfMm = (innerMm - 2 * GAP_MM) / 2;
  let blocks: readonly ColumnBlock[] = [...beside.left, ...notes(input, halfMm)];
  let stakes = plan.stakes;
  let yMm = topMm + MAP_MM + GAP_MM;
  let marks: Mark[] = [...map, ...beside.marks];
  const pages: PageModel[] = [];
  while (true) {
    const rows = Math.min(stakes.length, Math.floor((endMm - yMm - STAKES_HEAD_MM) / STAKES_ROW_MM));
    if (rows > 0) {
      const table = { xMm: MARGIN_MM, yMm, widthMm: innerMm };
      marks.push(...drawStakesTable(plan, stakes.slice(0, rows), table, input.unit));
      stakes = stakes.slice(rows);
      yMm += STAKES_HEAD_MM + rows * STAKES_ROW_MM + GAP_MM;
    }
    if (stakes.length === 0) {
      const placed = setInTwo(blocks, yMm, Math.max(0, endMm - yMm), halfMm);
      marks.push(...placed.marks);
      // A block taller than a page cannot be set; nothing more is gained by another page.
      const stuck = placed.left.length === blocks.length && yMm === topMm;
      blocks = stuck ? [] : placed.left;
    }
    pages.push(pageOf(marks, pages.length + 1));
    if (stakes.length === 0 && blocks.length === 0) return pages;
    marks = [];
    yMm = topMm;
  }
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

function notes({ plan }: StakesPageInput, widthMm: number): ColumnBlock[] {
  const { a, b } = plan.line;
  const block = (head: string, texts: readonly string[]) =>
    texts.length > 0 ? [paragraphs(head, texts, widthMm)] : [];
  return [
    ...block('How it is done', [
      `1. Set a watch by a telephone. Pull a tape from ${a.letter} to ${b.letter}; all lengths are as a tight tape lies on the ground.`,
      `2. At the length along it go off square (3, 4, 5), left or right as seen from ${a.letter}; check by the two tapes.`,
      '3. At the minute find the tip, in the middle of its fading edge. Tape from stake to tip: beyond or short, then right or left, with your back to the sun.',
      '4. Type it back under Shadow stakes: the site says how far the model missed.',
    ]),
    ...block('To know before', [...stakeCautions(plan), ...plan.notes]),
    ...block(
      'Times without a stake',
      plan.without.map(({ time, why }) => `${time}: ${why}.`),
    ),
  ];
}

/** Each caution once, with the stakes it is of. */
function stakeCautions({ stakes }: StakePlan): string[] {
  const numbers = new Map<string, number[]>();
  for (const { cautions, number } of stakes)
    for (const caution of cautions) numbers.set(caution, [...(numbers.get(caution) ?? []), number]);
  return [...numbers].map(([caution, which]) =>
    which.length === stakes.length && which.length > 1
      ? `All stakes: ${caution}.`
      : `Stake ${which.join(', ')}: ${caution}.`,
  );
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

function header(title: string, input: StakesPageInput, innerMm: number, page: number): Mark[] {
  const right = MARGIN_MM + innerMm;
  const where = input.layoutName ? `${input.siteName}, ${input.layoutName}` : input.siteName;
  return [
    {
      mark: 'text',
      atMm: [MARGIN_MM, MARGIN_MM + 5.5],
      text: cutToWidth(title, 6.2, innerMm - 45, true),
      sizeMm: 6.2,
      bold: true,
      ink: INK,
    },
    {
      mark: 'text',
      atMm: [MARGIN_MM, MARGIN_MM + 11.2],
      text: cutToWidth(`${input.day}, by ${input.clocks}. ${where}`, 3.7, innerMm),
      sizeMm: 3.7,
      ink: INK,
    },
    {
      mark: 'text',
      atMm: [right, MARGIN_MM + 4],
      text: page === 1 ? `made ${input.madeOn}` : `made ${input.madeOn}, page ${page}`,
      sizeMm: 2.8,
      ink: SOFT_INK,
      anchor: 'end',
    },
    {
      mark: 'line',
      pointsMm: [
        [MARGIN_MM, MARGIN_MM + 13.6],
        [right, MARGIN_MM + 13.6],
      ],
      stroke: { ink: RULE, widthMm: 0.2 },
    },
  ];
}
