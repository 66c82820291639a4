import type { BandSet } from '../units/bands.ts';
import { bandInks, hatchMarks } from './band-inks.ts';
import type { ColumnBlock } from './column-block.ts';
import { INK, SOFT_INK } from './inks.ts';
import type { Mark, PointMm } from './page-model.ts';
import type { PlanPageInput } from './plan-input.ts';
import { SIGNS, type Sign, signsUsed } from './signs.ts';
import { cutToWidth, wrapToWidth } from './text-width.ts';
import { VALUE_LINE } from './value-lines.ts';

const HEAD_MM = 3.2;
const TEXT_MM = 2.7;
const ROW_MM = 5;
const SWATCH_MM = 9;

const rectangle = (x: number, y: number, width: number, height: number): PointMm[] => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
];

/** A limit as it is said of this quantity: shares as per cent, others in the set's unit. */
function limitText(set: BandSet, value: number): string {
  return set.unit === 'share' ? String(Math.round(value * 100)) : String(value);
}

/** A band's range in words: "30 to 50 %", "under 30 %", "84 % and more". */
function bandRange(set: BandSet, index: number): string {
  if (set.unit === 'clock') return '';
  const unit =
    set.unit === 'share'
      ? ' %'
      : set.unit === '°'
        ? '°'
        : ` ${set.unit.replace('mol m⁻² d⁻¹', 'mol per m² a day')}`;
  const from = set.bands[index].from;
  const to = set.bands[index + 1]?.from;
  if (index === 0) return to === undefined ? '' : `under ${limitText(set, to)}${unit}`;
  if (to === undefined) return `${limitText(set, from)}${unit} and more`;
  return `${limitText(set, from)} to ${limitText(set, to)}${unit}`;
}

/** The bands of the map, lightest at the top, each with its name and range. */
export function bandLegend(input: PlanPageInput, widthMm: number): ColumnBlock | null {
  if (!input.bandMap) return null;
  const { bands: set, detail, lines, supposed, whatWouldChange } = input.bandMap;
  const inks = bandInks(set, input.inking);
  const head = wrapToWidth(set.quantity, HEAD_MM, widthMm, true);
  const under = wrapToWidth(supposed ? `${detail}, drawn with ${supposed}` : detail, TEXT_MM, widthMm);
  const change = whatWouldChange
    ? wrapToWidth(`What would change it most. ${whatWouldChange}`, TEXT_MM, widthMm)
    : [];
  const topMm = head.length * 4 + under.length * 3.6 + 1.5;
  const linesMm = topMm + set.bands.length * ROW_MM;
  const changeMm = linesMm + lines.length * ROW_MM;
  return {
    heightMm: changeMm + change.length * 3.6,
    draw: (xMm, yMm) => {
      const marks: Mark[] = [
        ...textLines(head, xMm, yMm, HEAD_MM, 4, true),
        ...textLines(under, xMm, yMm + head.length * 4, TEXT_MM, 3.6, false, SOFT_INK),
      ];
      set.bands.forEach((band, index) => {
        const y = yMm + topMm + (set.bands.length - 1 - index) * ROW_MM;
        const swatch = rectangle(xMm, y, SWATCH_MM, ROW_MM - 0.6);
        marks.push({ mark: 'polygon', ringsMm: [swatch], fill: inks[index].tint });
        marks.push(...hatchMarks([swatch], inks[index]));
        marks.push({ mark: 'polygon', ringsMm: [swatch], stroke: { ink: INK, widthMm: 0.15 } });
        const words = `${band.name}, ${bandRange(set, index)}`.replace(/, $/, '');
        marks.push(label(words, xMm + SWATCH_MM + 2, y + 3.3, widthMm - SWATCH_MM - 2));
      });
      lines.forEach(({ words }, row) => {
        const y = yMm + linesMm + row * ROW_MM;
        const pointsMm: PointMm[] = [
          [xMm, y + 2.4],
          [xMm + SWATCH_MM, y + 2.4],
        ];
        marks.push({ mark: 'line', pointsMm, stroke: VALUE_LINE });
        marks.push(label(words, xMm + SWATCH_MM + 2, y + 3.3, widthMm - SWATCH_MM - 2));
      });
      marks.push(...textLines(change, xMm, yMm + changeMm, TEXT_MM, 3.6));
      return marks;
    },
  };
}

/** What each outline and line on the map means. */
export function signLegend(input: PlanPageInput, widthMm: number): ColumnBlock | null {
  const used = signsUsed(input);
  if (used.length === 0) return null;
  const rowMm = 4.4;
  const treesShown = input.trees.length > 0;
  return {
    heightMm: 4.5 + used.length * rowMm + (treesShown ? rowMm : 0),
    draw: (xMm, yMm) => {
      const marks: Mark[] = [...textLines(['Signs'], xMm, yMm, HEAD_MM, 4, true)];
      used.forEach((name, row) => {
        const y = yMm + 4.5 + row * rowMm;
        marks.push(...signSwatch(SIGNS[name], xMm, y, input.inking === 'tints'));
        marks.push(label(SIGNS[name].words, xMm + SWATCH_MM + 2, y + 2.9, widthMm - SWATCH_MM - 2));
      });
      if (treesShown) {
        const y = yMm + 4.5 + used.length * rowMm;
        const stroke = { ink: INK, widthMm: 0.15 };
        marks.push({ mark: 'circle', centreMm: [xMm + 2.5, y + 1.9], radiusMm: 0.5, fill: INK, stroke });
        marks.push({
          mark: 'circle',
          centreMm: [xMm + 6.5, y + 1.9],
          radiusMm: 0.5,
          fill: '#ffffff',
          stroke,
        });
        marks.push(label('stem: standing, planned', xMm + SWATCH_MM + 2, y + 2.9, widthMm - SWATCH_MM - 2));
      }
      return marks;
    },
  };
}

function signSwatch(sign: Sign, xMm: number, yMm: number, tinted: boolean): Mark[] {
  const { stroke } = sign;
  if (sign.shape === 'line')
    return [
      {
        mark: 'line',
        pointsMm: [
          [xMm, yMm + 1.9],
          [xMm + SWATCH_MM, yMm + 1.9],
        ],
        stroke,
      },
    ];
  if (sign.shape === 'crown')
    return [{ mark: 'circle', centreMm: [xMm + SWATCH_MM / 2, yMm + 1.9], radiusMm: 1.8, stroke }];
  return [
    {
      mark: 'polygon',
      ringsMm: [rectangle(xMm, yMm + 0.3, SWATCH_MM, 3.2)],
      fill: tinted || sign.solid ? sign.fill : undefined,
      stroke,
    },
  ];
}

function label(text: string, xMm: number, baselineMm: number, widthMm: number): Mark {
  return {
    mark: 'text',
    atMm: [xMm, baselineMm],
    text: cutToWidth(text, TEXT_MM, widthMm),
    sizeMm: TEXT_MM,
    ink: INK,
  };
}

/** Lines of text one under the other, the first with its top at `yMm`. */
export function textLines(
  lines: readonly string[],
  xMm: number,
  yMm: number,
  sizeMm: number,
  stepMm: number,
  bold = false,
  ink = INK,
): Mark[] {
  return lines.map((text, i) => ({
    mark: 'text',
    atMm: [xMm, yMm + sizeMm + i * stepMm],
    text,
    sizeMm,
    bold,
    ink,
  }));
}
