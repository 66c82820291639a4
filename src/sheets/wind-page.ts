import type { ColumnBlock } from './column-block.ts';
import { textLines } from './draw-legend.ts';
import { INK } from './inks.ts';
import { pageHead } from './page-head.ts';
import type { Mark, PageModel } from './page-model.ts';
import { MARGIN_MM, pageSizeMm } from './paper.ts';
import { ROSE_CLASSES, roseRings } from './rose-shape.ts';
import { textWidthMm, wrapToWidth } from './text-width.ts';
import { seasonSentence } from './wind-climate-words.ts';
import type { WindPageInput, WindPageSeason } from './wind-page-input.ts';
import { headed, sectorTable, signTable } from './wind-page-tables.ts';
import { roseMarks } from './wind-rose-marks.ts';

const UNDER_TITLE = 'The open wind, 10 m above the ground, before belts and trees slow it';
const HEADER_MM = 17;
const RADIUS_MM = 29;
const GAP_MM = 4;
const TEXT_MM = 2.8;
const STEP_MM = 3.8;
const HEAD_MM = 3.4;

/** The page of the wind: both seasons' roses, Beaufort's signs in hours, the directions in figures, what it rests on. */
export function windPages(input: WindPageInput): PageModel[] {
  const { widthMm, heightMm } = pageSizeMm(input.paper, 'portrait');
  const innerMm = widthMm - 2 * MARGIN_MM;
  const title = `The wind at ${input.siteName}`;
  const topMm = MARGIN_MM + HEADER_MM;
  const endMm = heightMm - MARGIN_MM;
  const pages: Mark[][] = [[]];
  let yMm = topMm;
  for (const block of [
    roses(input, innerMm),
    signTable(input, innerMm),
    sectorTable(input, innerMm),
    ...paragraphs(input, innerMm),
  ]) {
    if (yMm + block.heightMm > endMm && yMm > topMm) {
      pages.push([]);
      yMm = topMm;
    }
    pages[pages.length - 1].push(...block.draw(MARGIN_MM, yMm));
    yMm += block.heightMm + GAP_MM;
  }
  return pages.map((marks, i) => ({
    title,
    widthMm,
    heightMm,
    marks: [
      ...pageHead(
        { title, under: UNDER_TITLE, made: `made ${input.madeOn}`, page: i + 1, text: 'broad' },
        innerMm,
      ),
      ...marks,
    ],
  }));
}

const seasonsOf = (input: WindPageInput): readonly (readonly [string, WindPageSeason])[] => [
  [`Growing season, ${input.growingWords}`, input.growing],
  ['Rest of the year', input.rest],
];

/** Both roses to one scale, with a key to their ink. */
function roses(input: WindPageInput, innerMm: number): ColumnBlock {
  const columnMm = (innerMm - GAP_MM) / 2;
  const seasons = seasonsOf(input);
  const rings = roseRings([...input.growing.sectors, ...input.rest.sectors]);
  const sentences = seasons.map(([, season]) =>
    wrapToWidth(seasonSentence(season, input.unit).replaceAll(' %', '\u00a0%'), TEXT_MM, columnMm),
  );
  const wordsMm = 5 + Math.max(...sentences.map((lines) => lines.length)) * STEP_MM;
  const middleMm = wordsMm + 7 + RADIUS_MM;
  const keyMm = middleMm + RADIUS_MM + 13;
  return {
    heightMm: keyMm + 4,
    draw: (xMm, yMm) => [
      ...seasons.flatMap(([name, season], i) => {
        const x = xMm + i * (columnMm + GAP_MM);
        return [
          ...textLines([name], x, yMm, HEAD_MM, 4, true),
          ...textLines(sentences[i], x, yMm + 5, TEXT_MM, STEP_MM),
          ...roseMarks(season, [x + columnMm / 2, yMm + middleMm], RADIUS_MM, rings),
        ];
      }),
      ...key(xMm, yMm + keyMm),
    ],
  };
}

function key(xMm: number, yMm: number): Mark[] {
  let x = xMm;
  const words = (text: string): Mark => ({
    mark: 'text',
    atMm: [x, yMm + 2.4],
    text,
    sizeMm: 2.6,
    ink: INK,
  });
  const lead = 'Longer is more often. Hours in which ';
  const marks: Mark[] = [words(lead)];
  x += textWidthMm(lead, 2.6) + 1;
  for (const { words: sign, tint, breadth } of ROSE_CLASSES) {
    const heightMm = 3.6 * breadth;
    const [top, bottom] = [yMm + 1.5 - heightMm / 2, yMm + 1.5 + heightMm / 2];
    marks.push({
      mark: 'polygon',
      ringsMm: [
        [
          [x, top],
          [x + 6, top],
          [x + 6, bottom],
          [x, bottom],
        ],
      ],
      fill: tint,
      stroke: { ink: INK, widthMm: 0.18 },
    });
    x += 7.2;
    marks.push(words(sign));
    x += textWidthMm(sign, 2.6) + 3.5;
  }
  return marks;
}

function paragraphs(input: WindPageInput, widthMm: number): ColumnBlock[] {
  const texts = [
    ...input.rests,
    ...input.assumed.map((clause) => `Assumed: ${clause.replace(/^wind: /, '')}.`),
    'Hours come from each direction’s Weibull distribution (scale c, shape k); they are those of a usual year, and a single year differs.',
  ];
  const lines = texts.flatMap((text) => wrapToWidth(text, TEXT_MM, widthMm));
  return [
    headed('What it rests on', lines.length * STEP_MM, (xMm, yMm) =>
      textLines(lines, xMm, yMm, TEXT_MM, STEP_MM),
    ),
  ];
}
