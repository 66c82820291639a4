import type { ColumnBlock } from './column-block.ts';
import { textLines } from './draw-legend.ts';
import { LET_THROUGH, STRIP_INKS } from './horizon-inks.ts';
import type { DrawnSunPath, HorizonInput } from './horizon-input.ts';
import { dayWords, drawnPaths, PATH_STROKES } from './horizon-sun.ts';
import { INK, SOFT_INK } from './inks.ts';
import type { Mark, PointMm } from './page-model.ts';
import { wrapToWidth } from './text-width.ts';

const HEAD_MM = 3.2;
const TEXT_MM = 2.6;
const ROW_MM = 4.3;
const STEP_MM = 3.4;
const SWATCH_MM = 9;
const SWATCH_HIGH_MM = 3.5;
/** The thinnest line of the key's swatches. */
const PEN_MM = 0.12;

/** One sign of the strip and what it means. */
export interface KeyEntry {
  readonly words: string;
  /** Nine millimetres wide and three and a half high, from its upper left corner. */
  readonly swatch: (xMm: number, yMm: number) => Mark[];
}

const filled = (words: string, fill: string): KeyEntry => ({
  words,
  swatch: (xMm, yMm) => {
    const ring: PointMm[] = [
      [xMm, yMm],
      [xMm + SWATCH_MM, yMm],
      [xMm + SWATCH_MM, yMm + SWATCH_HIGH_MM],
      [xMm, yMm + SWATCH_HIGH_MM],
    ];
    return [{ mark: 'polygon', ringsMm: [ring], fill, stroke: { ink: INK, widthMm: PEN_MM } }];
  },
});

const pathEntry = (words: string, which: DrawnSunPath['which']): KeyEntry => ({
  words,
  swatch: (xMm, yMm) => {
    const { weight, dash } = PATH_STROKES[which];
    const y = yMm + SWATCH_HIGH_MM / 2;
    const ofMonth = which === 'month';
    return [
      {
        mark: 'line',
        pointsMm: [
          [xMm, y],
          [xMm + SWATCH_MM, y],
        ],
        stroke: {
          ink: STRIP_INKS.sun,
          widthMm: weight * PEN_MM,
          dashMm: dash?.map((length) => length * PEN_MM),
        },
      },
      {
        mark: 'circle',
        centreMm: [xMm + SWATCH_MM / 2, y],
        radiusMm: (ofMonth ? 4 : 3) * PEN_MM,
        fill: ofMonth ? STRIP_INKS.sun : STRIP_INKS.paper,
        stroke: { ink: STRIP_INKS.sun, widthMm: 1.5 * PEN_MM },
      },
    ];
  },
});

/** What the tints and the lines of the strip mean. */
export function keyEntries({ view }: HorizonInput): KeyEntry[] {
  const equinoxes = view.sunPaths
    .filter(({ which }) => which === 'march-equinox' || which === 'september-equinox')
    .map(dayWords);
  const pathWords = (path: DrawnSunPath): string => {
    if (path.which === 'month') return `the sun on ${dayWords(path)}, leaves as on that day`;
    if (path.which.endsWith('equinox')) return `the sun at the equinoxes, ${equinoxes.join(' and ')}`;
    return `the sun at the solstice, ${dayWords(path)}`;
  };
  return [
    ...LET_THROUGH.map(({ words, range }, tint) =>
      filled(`foliage, ${words}: ${range}`, STRIP_INKS.foliage[tint]),
    ),
    filled('walls and buildings', STRIP_INKS.stone),
    filled('the land itself', STRIP_INKS.land),
    ...drawnPaths(view).map((path) => pathEntry(pathWords(path), path.which)),
  ];
}

/** What the dots on the sun's paths are. */
export const dotsInWords = ({ view }: HorizonInput): string =>
  `A dot at each full hour by the clocks there: ${[...new Set(drawnPaths(view).map(({ clock }) => clock))].join(', ')}.`;

/** The key as it stands on the sheet. */
export function horizonKey(input: HorizonInput, widthMm: number): ColumnBlock {
  const entries = keyEntries(input);
  const under = wrapToWidth(dotsInWords(input), TEXT_MM, widthMm);
  const rows = entries.map(({ words }) => wrapToWidth(words, TEXT_MM, widthMm - SWATCH_MM - 2));
  const heights = rows.map((lines) => Math.max(ROW_MM, lines.length * STEP_MM + 0.6));
  const headMm = HEAD_MM + 2.4;
  return {
    heightMm: headMm + heights.reduce((sum, height) => sum + height, 0) + 1 + under.length * STEP_MM,
    draw: (xMm, yMm) => {
      const marks: Mark[] = textLines(['On the strip'], xMm, yMm, HEAD_MM, STEP_MM, true);
      let y = yMm + headMm;
      entries.forEach(({ swatch }, i) => {
        marks.push(...swatch(xMm, y), ...textLines(rows[i], xMm + SWATCH_MM + 2, y + 0.3, TEXT_MM, STEP_MM));
        y += heights[i];
      });
      return [...marks, ...textLines(under, xMm, y + 1, TEXT_MM, STEP_MM, false, SOFT_INK)];
    },
  };
}
