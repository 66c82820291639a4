import { CLAY, INK, LEAF_WASH, PAPER, RULE, SOFT_INK, STONE, WATER } from './inks.ts';
import type { Mark, PointMm } from './page-model.ts';

/** The wind along a line through a belt, as published and as measured. Distances in belt heights, shares of open wind. */
export interface ShelterCurveInput {
  /** The published function for one belt after the other: full, dashed, dotted. */
  readonly curves: readonly (readonly (readonly [number, number])[])[];
  readonly measured: {
    readonly band: {
      readonly best: readonly (readonly [number, number])[];
      readonly weakest: readonly (readonly [number, number])[];
    };
    /** Full dots. */
    readonly iowa: readonly (readonly [number, number])[];
    /** Open dots. */
    readonly moravia: readonly (readonly [number, number])[];
    /** A box: where the quietest places lay. */
    readonly ontario: {
      readonly fromH: number;
      readonly toH: number;
      readonly leastShare: number;
      readonly mostShare: number;
    };
    /** A bar: where the weakest and the best reach this share; and a tick upwind. */
    readonly victoria: { readonly share: number; readonly weakestH: number; readonly bestH: number };
  };
}

/** Words in the drawing, at a distance in heights and a share of open wind. */
export interface CurveLabel {
  readonly text: string;
  readonly distanceH: number;
  readonly share: number;
  readonly of: 'function' | 'measured';
}

/** Lengths of the drawing, in units of the page. */
export interface CurveSizes {
  readonly width: number;
  readonly height: number;
  readonly text: number;
  readonly pen: number;
}

const FROM_H = -5;
const TO_H = 35;
const HEIGHTS = [-5, 0, 5, 10, 15, 20, 25, 30, 35];
const CUTS = [0, 0.15, 0.3, 0.5, 1] as const;
/** Room for the words at the left and below, in sizes of the text. */
const LEFT = 4.4;
const BELOW = 2.6;
const ABOVE = 0.8;
const DASHES = [undefined, [4, 2.4], [1.2, 1.8]] as const;

/**
 * The curve, its measured band and points.
 * @param lengthOf words below the axis for some multiples of the height, such as their lengths; absent: none.
 * @param labels words beside what they name.
 */
export function drawShelterCurve(
  { curves, measured }: ShelterCurveInput,
  { width, height, text, pen }: CurveSizes,
  lengthOf?: (heights: number) => string,
  labels: readonly CurveLabel[] = [],
): Mark[] {
  const left = LEFT * text;
  const right = width - text;
  const top = ABOVE * text;
  const base = height - (BELOW + (lengthOf ? 1.2 : 0)) * text;
  const x = (distanceH: number) => left + ((distanceH - FROM_H) / (TO_H - FROM_H)) * (right - left);
  const y = (share: number) => base - share * (base - top);
  const at = ([distanceH, share]: readonly [number, number]): PointMm => [x(distanceH), y(share)];
  const line = (
    pointsMm: readonly PointMm[],
    ink: string,
    widthMm: number,
    dashMm?: readonly number[],
  ): Mark => ({
    mark: 'line',
    pointsMm,
    stroke: { ink, widthMm, ...(dashMm ? { dashMm: dashMm.map((part) => part * pen) } : {}) },
  });
  const words = (
    said: string,
    [atX, atY]: PointMm,
    anchor: 'start' | 'middle' | 'end',
    ink = SOFT_INK,
  ): Mark => ({
    mark: 'text',
    atMm: [atX, atY],
    text: said,
    sizeMm: text,
    ink,
    anchor,
    haloMm: text / 6,
  });
  const { band, iowa, moravia, ontario, victoria } = measured;
  const radius = 0.27 * text;
  const dot = (point: readonly [number, number], fill: string): Mark => ({
    mark: 'circle',
    centreMm: at(point),
    radiusMm: radius,
    fill,
    stroke: { ink: CLAY, widthMm: 1.4 * pen },
  });
  return [
    {
      mark: 'polygon',
      ringsMm: [[...band.best.map(at), ...band.weakest.toReversed().map(at)]],
      fill: LEAF_WASH,
    },
    ...CUTS.flatMap((cut): Mark[] => [
      line(
        [
          [left, y(1 - cut)],
          [right, y(1 - cut)],
        ],
        RULE,
        0.7 * pen,
      ),
      words(
        cut === 0 ? 'open' : cut === 1 ? 'still' : `−${Math.round(cut * 100)} %`,
        [left - 0.5 * text, y(1 - cut) + 0.35 * text],
        'end',
      ),
    ]),
    ...HEIGHTS.flatMap((heights): Mark[] => [
      line(
        [
          [x(heights), base],
          [x(heights), base + 0.35 * text],
        ],
        STONE,
        pen,
      ),
      words(`${heights}`.replace('-', '−'), [x(heights), base + 1.4 * text], 'middle'),
      ...(lengthOf && heights % 10 === 0 && heights > 0
        ? [words(lengthOf(heights), [x(heights), base + 2.6 * text], 'middle', INK)]
        : []),
    ]),
    words('heights behind the belt', [right, base + (lengthOf ? 3.8 : 2.6) * text - 0.2 * text], 'end'),
    // The belt.
    line(
      [
        [x(0), base],
        [x(0), y(0.34)],
      ],
      STONE,
      5 * pen,
    ),
    ...curves.map((points, i) => line(points.map(at), WATER, 2.2 * pen, DASHES[i % DASHES.length])),
    {
      mark: 'polygon',
      ringsMm: [
        [
          at([ontario.fromH, ontario.leastShare]),
          at([ontario.toH, ontario.leastShare]),
          at([ontario.toH, ontario.mostShare]),
          at([ontario.fromH, ontario.mostShare]),
        ],
      ],
      stroke: { ink: CLAY, widthMm: 1.2 * pen, dashMm: [2.4 * pen, 1.6 * pen] },
    },
    line([at([victoria.weakestH, victoria.share]), at([victoria.bestH, victoria.share])], CLAY, 1.4 * pen),
    ...[victoria.weakestH, victoria.bestH].map((heights) =>
      line(
        [
          [x(heights), y(victoria.share) - radius],
          [x(heights), y(victoria.share) + radius],
        ],
        CLAY,
        1.4 * pen,
      ),
    ),
    ...iowa.map((point) => dot(point, CLAY)),
    ...moravia.map((point) => dot(point, PAPER)),
    ...labels.map((label) =>
      words(label.text, at([label.distanceH, label.share]), 'start', label.of === 'function' ? WATER : CLAY),
    ),
  ];
}
