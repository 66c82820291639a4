import { degToRad, radToDeg } from '../units/angle.ts';
import type { ColumnBlock } from './column-block.ts';
import { textLines } from './draw-legend.ts';
import { INK, PAPER, SOFT_INK } from './inks.ts';
import type { MapPlacement } from './map-placement.ts';
import { scaleBarLength } from './map-scale.ts';
import type { Mark, PointMm } from './page-model.ts';
import type { PlanPageInput } from './plan-input.ts';
import { wrapToWidth } from './text-width.ts';

const NORTH_MM = 19;

/** "1.2° east of", for an angle that is clockwise positive. */
const eastOrWest = (deg: number) => `${Math.abs(deg).toFixed(1)}° ${deg >= 0 ? 'east' : 'west'} of`;

/** The scale in figures and as a bar, the north arrow, and how the other norths lie to it. */
export function scaleAndNorth(input: PlanPageInput, placement: MapPlacement, widthMm: number): ColumnBlock {
  const { scale, upAzimuthDeg } = placement;
  const bar = scaleBarLength(scale, input.unit, Math.min(50, widthMm - NORTH_MM - 6));
  const turned = upAzimuthDeg % 360 === 0 ? 'True north is at the top.' : 'The arrow points to true north.';
  const zone = input.frame.epsg % 100;
  const hemisphere = input.frame.epsg >= 32700 ? 'S' : 'N';
  const convergenceDeg = radToDeg(input.frame.convergenceRad);
  const notes = [
    turned,
    `The grid of UTM zone ${zone}${hemisphere} lies ${eastOrWest(convergenceDeg)} it.`,
    ...(input.declinationDeg === null
      ? []
      : [
          `A compass points ${eastOrWest(input.declinationDeg)} it (thin arrow; ${input.calendarYear - input.year}).`,
        ]),
    ...(placement.holdsAll ? [] : ['Part of the site lies outside this sheet.']),
  ].flatMap((note) => wrapToWidth(note, 2.4, widthMm));
  return {
    heightMm: NORTH_MM + 2 + notes.length * 3.2,
    draw: (xMm, yMm) => [
      {
        mark: 'text',
        atMm: [xMm, yMm + 5],
        text: `1 : ${scale.toLocaleString('en-GB').replaceAll(',', ' ')}`,
        sizeMm: 5,
        bold: true,
        ink: INK,
      },
      ...drawBar(bar, input.unit, xMm, yMm + 9.5),
      ...northArrow(
        [xMm + widthMm - NORTH_MM / 2, yMm + NORTH_MM / 2],
        -upAzimuthDeg,
        input.declinationDeg === null ? null : input.declinationDeg - upAzimuthDeg,
      ),
      ...textLines(notes, xMm, yMm + NORTH_MM + 1, 2.4, 3.2, false, SOFT_INK),
    ],
  };
}

function drawBar(
  { length, parts, lengthMm }: ReturnType<typeof scaleBarLength>,
  unit: string,
  xMm: number,
  yMm: number,
): Mark[] {
  const partMm = lengthMm / parts;
  const stroke = { ink: INK, widthMm: 0.2 };
  const marks: Mark[] = [];
  for (let part = 0; part < parts; part++) {
    const x = xMm + part * partMm;
    marks.push({
      mark: 'polygon',
      ringsMm: [
        [
          [x, yMm],
          [x + partMm, yMm],
          [x + partMm, yMm + 1.6],
          [x, yMm + 1.6],
        ],
      ],
      fill: part % 2 === 0 ? INK : PAPER,
      stroke,
    });
  }
  const figure = (share: number, text: string): Mark => ({
    mark: 'text',
    atMm: [xMm + share * lengthMm, yMm + 4.8],
    text,
    sizeMm: 2.6,
    ink: INK,
    anchor: share === 0 ? 'start' : 'middle',
  });
  marks.push(figure(0, '0'), figure(1, `${Number(length.toPrecision(6))} ${unit}`));
  return marks;
}

/** The arrow to true north, with a thin one to magnetic north. Turns are clockwise from the top of the page. */
function northArrow(centre: PointMm, turnDeg: number, compassTurnDeg: number | null): Mark[] {
  const turn = (deg: number, [x, y]: PointMm): PointMm => {
    const rad = degToRad(deg);
    return [
      centre[0] + x * Math.cos(rad) - y * Math.sin(rad),
      centre[1] + x * Math.sin(rad) + y * Math.cos(rad),
    ];
  };
  const right: PointMm[] = [
    [0, -6],
    [2.2, 5.5],
    [0, 3.8],
  ];
  const outline: PointMm[] = [...right, [-2.2, 5.5]];
  const marks: Mark[] = [];
  if (compassTurnDeg !== null)
    marks.push({
      mark: 'line',
      pointsMm: [
        turn(compassTurnDeg, [0, 6]),
        turn(compassTurnDeg, [0, -6.5]),
        turn(compassTurnDeg, [0.8, -5]),
      ],
      stroke: { ink: SOFT_INK, widthMm: 0.2 },
    });
  marks.push(
    {
      mark: 'polygon',
      ringsMm: [outline.map((point) => turn(turnDeg, point))],
      fill: PAPER,
      stroke: { ink: INK, widthMm: 0.25 },
    },
    { mark: 'polygon', ringsMm: [right.map((point) => turn(turnDeg, point))], fill: INK },
  );
  const [x, y] = turn(turnDeg, [0, -8]);
  marks.push({
    mark: 'text',
    atMm: [x, y + 1.1],
    text: 'N',
    sizeMm: 3.2,
    bold: true,
    ink: INK,
    anchor: 'middle',
  });
  return marks;
}
