import { CLAY, INK, LEAF_WASH, RULE, SOFT_INK, STONE, WATER } from './inks.ts';
import type { Mark, PointMm } from './page-model.ts';

/** Ground at one distance: shares 0 to 1. */
interface ChartBin {
  readonly atM: number;
  readonly lightShare: number;
  readonly windCut: number;
}
/** One year's curves. */
export interface EdgeChartYear {
  readonly year: number;
  readonly bins: readonly ChartBin[];
}
export interface EdgeChartInput {
  /** The last is drawn full, those before it dashed. */
  readonly years: readonly EdgeChartYear[];
  /** Of the edge in the last year, m: its heights are ruled above. */
  readonly heightM: number;
  /** Where light and shelter are enough together in the last year, m. */
  readonly good: readonly { readonly fromM: number; readonly toM: number }[];
  readonly enough: { readonly light: number; readonly windCut: number };
}

/** How lengths are written: a round length below about the one given, in metres, and its figure. */
export interface EdgeChartUnits {
  readonly unit: string;
  /** Units of the axis in a metre. */
  readonly perM: number;
}

export interface EdgeChartSizes {
  readonly width: number;
  readonly height: number;
  readonly text: number;
  readonly pen: number;
}

const STEPS = [1, 2, 5, 10, 20, 50, 100, 200, 500];
const TICKS = 5;
const HEIGHT_TICKS = 6;
const SHARES = [0, 0.5, 1] as const;
/** Room about the drawing, in sizes of the text. */
const LEFT = 3.7;
const RIGHT = 4.6;
const BELOW = 2.8;
const ABOVE = 2.9;

const stepFor = (most: number, ticks: number): number =>
  STEPS.find((step) => most / step <= ticks) ?? STEPS[STEPS.length - 1];

/** Light and shelter by the distance from an edge, on one axis of lengths, with the edge's heights ruled above. */
export function drawEdgeChart(
  { years, heightM, good, enough }: EdgeChartInput,
  { width, height, text, pen }: EdgeChartSizes,
  { unit, perM }: EdgeChartUnits,
): Mark[] {
  const last = years[years.length - 1];
  const farM = years.reduce((most, { bins }) => Math.max(most, bins[bins.length - 1]?.atM ?? 0), 1);
  const left = LEFT * text;
  const right = width - RIGHT * text;
  const top = ABOVE * text;
  const base = height - BELOW * text;
  const x = (atM: number) => left + (atM / farM) * (right - left);
  const y = (share: number) => base - Math.min(1, Math.max(0, share)) * (base - top);
  const line = (pointsMm: readonly PointMm[], ink: string, widthMm: number, dashMm?: number[]): Mark => ({
    mark: 'line',
    pointsMm,
    stroke: { ink, widthMm, ...(dashMm ? { dashMm } : {}) },
  });
  const words = (
    said: string,
    [atX, atY]: PointMm,
    anchor: 'start' | 'middle' | 'end',
    ink = SOFT_INK,
    bold = false,
  ): Mark => ({
    mark: 'text',
    atMm: [atX, atY],
    text: said,
    sizeMm: text,
    ink,
    anchor,
    bold,
    haloMm: text / 6,
  });
  const curve = (of: 'lightShare' | 'windCut', ink: string): Mark[] =>
    years.map(({ bins }, k) =>
      line(
        bins.map((bin): PointMm => [x(bin.atM), y(bin[of])]),
        ink,
        (k === years.length - 1 ? 2.6 : 1.6) * pen,
        k === years.length - 1 ? undefined : [5 * pen, 3.4 * pen],
      ),
    );
  const lengthStep = stepFor(farM * perM, TICKS);
  const heightStep = stepFor(farM / heightM, HEIGHT_TICKS);
  const ticks = (step: number, most: number) =>
    Array.from({ length: Math.floor(most / step + 1e-9) + 1 }, (_, k) => k * step);
  const ends = endLabels(last, y, text);
  return [
    ...good.map(
      ({ fromM, toM }): Mark => ({
        mark: 'polygon',
        ringsMm: [
          [
            [x(fromM), top],
            [x(Math.min(toM, farM)), top],
            [x(Math.min(toM, farM)), base],
            [x(fromM), base],
          ],
        ],
        fill: LEAF_WASH,
      }),
    ),
    ...SHARES.flatMap((share): Mark[] => [
      line(
        [
          [left, y(share)],
          [right, y(share)],
        ],
        RULE,
        0.8 * pen,
      ),
      words(`${share * 100} %`, [left - 0.5 * text, y(share) + 0.35 * text], 'end'),
    ]),
    line(
      [
        [left, y(enough.light)],
        [right, y(enough.light)],
      ],
      CLAY,
      1.1 * pen,
      [1.4 * pen, 2.6 * pen],
    ),
    line(
      [
        [left, y(enough.windCut)],
        [right, y(enough.windCut)],
      ],
      WATER,
      1.1 * pen,
      [1.4 * pen, 2.6 * pen],
    ),
    // Heights above.
    line(
      [
        [left, top],
        [right, top],
      ],
      STONE,
      pen,
    ),
    ...ticks(heightStep, farM / heightM).flatMap((heights): Mark[] => [
      line(
        [
          [x(heights * heightM), top],
          [x(heights * heightM), top - 0.35 * text],
        ],
        STONE,
        pen,
      ),
      words(`${heights}`, [x(heights * heightM), top - 0.7 * text], 'middle'),
    ]),
    words('heights', [right + 0.5 * text, top - 0.7 * text], 'start'),
    // Lengths below.
    line(
      [
        [left, base],
        [right, base],
      ],
      STONE,
      pen,
    ),
    ...ticks(lengthStep, farM * perM).flatMap((length): Mark[] => [
      line(
        [
          [x(length / perM), base],
          [x(length / perM), base + 0.35 * text],
        ],
        STONE,
        pen,
      ),
      words(`${length}`, [x(length / perM), base + 1.4 * text], 'middle', INK),
    ]),
    words(`${unit} out`, [right + 0.5 * text, base + 1.4 * text], 'start', INK),
    // The edge.
    line(
      [
        [left, base],
        [left, top],
      ],
      STONE,
      5 * pen,
    ),
    ...curve('windCut', WATER),
    ...curve('lightShare', CLAY),
    words('light', [right + 0.5 * text, ends.light], 'start', CLAY, true),
    words('wind cut', [right + 0.5 * text, ends.wind], 'start', WATER, true),
  ];
}

/** Baselines of the two curves' names, apart where the curves end close together. */
function endLabels(
  { bins }: EdgeChartYear,
  y: (share: number) => number,
  text: number,
): { readonly light: number; readonly wind: number } {
  const end = bins[bins.length - 1];
  if (!end) return { light: y(1), wind: y(0) };
  const light = y(end.lightShare) + 0.35 * text;
  const wind = y(end.windCut) + 0.35 * text;
  const short = 1.2 * text - Math.abs(light - wind);
  if (short <= 0) return { light, wind };
  const up = light <= wind ? 1 : -1;
  return { light: light - (up * short) / 2, wind: wind + (up * short) / 2 };
}
