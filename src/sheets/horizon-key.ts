import type { ColumnBlock } from './column-block.ts';
import { textLines } from './draw-legend.ts';
import { LET_THROUGH, STRIP_INKS } from './horizon-inks.ts';
import type { HorizonInput } from './horizon-input.ts';
import { dayWords, drawnPaths, PATH_STROKES } from './horizon-sun.ts';
import { INK, SOFT_INK } from './inks.ts';
import type { Mark, PointMm, Stroke } from './page-model.ts';
import { wrapToWidth } from './text-width.ts';

const HEAD_MM = 3.2;
const TEXT_MM = 2.6;
const ROW_MM = 4.3;
const STEP_MM = 3.4;
const SWATCH_MM = 9;
/** The thinnest line of the key's swatches. */
const PEN_MM = 0.12;

const swatchAt = (xMm: number, yMm: number): PointMm[] => [
  [xMm, yMm],
  [xMm + SWATCH_MM, yMm],
  [xMm + SWATCH_MM, yMm + ROW_MM - 0.8],
  [xMm, yMm + ROW_MM - 0.8],
];

interface Entry {
  readonly words: string;
  readonly draw: (xMm: number, yMm: number) => Mark[];
}

const filled = (words: string, fill: string, stroke: Stroke): Entry => ({
  words,
  draw: (xMm, yMm) => [{ mark: 'polygon', ringsMm: [swatchAt(xMm, yMm)], fill, stroke }],
});

const pathEntry = (words: string, which: keyof typeof PATH_STROKES): Entry => ({
  words,
  draw: (xMm, yMm) => {
    const { weight, dash } = PATH_STROKES[which];
    const y = yMm + (ROW_MM - 0.8) / 2;
    const bold = which === 'month';
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
        radiusMm: (bold ? 4 : 3) * PEN_MM,
        fill: bold ? STRIP_INKS.sun : STRIP_INKS.paper,
        stroke: { ink: STRIP_INKS.sun, widthMm: 1.5 * PEN_MM },
      },
    ];
  },
});

/** What the tints, the lines and the dots of the strip mean. */
export function horizonKey(input: HorizonInput, widthMm: number): ColumnBlock {
  const outline: Stroke = { ink: INK, widthMm: PEN_MM };
  const equinoxes = input.view.sunPaths
    .filter(({ which }) => which === 'march-equinox' || which === 'september-equinox')
    .map(dayWords);
  const entries: Entry[] = [
    ...LET_THROUGH.map(({ words, range }, tint) =>
      filled(`foliage, ${words}: ${range}`, STRIP_INKS.foliage[tint], outline),
    ),
    filled('walls and buildings', STRIP_INKS.stone, outline),
    filled('the land itself', STRIP_INKS.land, outline),
    ...drawnPaths(input.view).map((path) =>
      pathEntry(
        path.which === 'month'
          ? `the sun on ${dayWords(path)}, leaves as on that day`
          : path.which.endsWith('equinox')
            ? `the sun at the equinoxes, ${equinoxes.join(' and ')}`
            : `the sun at the solstice, ${dayWords(path)}`,
        path.which,
      ),
    ),
  ];
  const clocks = [...new Set(drawnPaths(input.view).map(({ clock }) => clock))];
  const under = wrapToWidth(
    `A dot at each full hour by the clocks there: ${clocks.join(', ')}.`,
    TEXT_MM,
    widthMm,
  );
  const rows = entries.map(({ words }) => wrapToWidth(words, TEXT_MM, widthMm - SWATCH_MM - 2));
  const heights = rows.map((lines) => Math.max(ROW_MM, lines.length * STEP_MM + 0.6));
  const headMm = HEAD_MM + 2.4;
  return {
    heightMm: headMm + heights.reduce((sum, height) => sum + height, 0) + 1 + under.length * STEP_MM,
    draw: (xMm, yMm) => {
      const marks: Mark[] = textLines(['On the strip'], xMm, yMm, HEAD_MM, STEP_MM, true);
      let y = yMm + headMm;
      entries.forEach((entry, i) => {
        marks.push(
          ...entry.draw(xMm, y),
          ...textLines(rows[i], xMm + SWATCH_MM + 2, y + 0.3, TEXT_MM, STEP_MM),
        );
        y += heights[i];
      });
      return [...marks, ...textLines(under, xMm, y + 1, TEXT_MM, STEP_MM, false, SOFT_INK)];
    },
  };
}
