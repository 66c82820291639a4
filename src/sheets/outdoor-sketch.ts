import type { LonLat } from '../geo/frame.ts';
import type { ReferenceLine } from '../outside/reference-line.ts';
import { drawMap } from './draw-map.ts';
import { INK, LEAF, PAPER, SOFT_INK } from './inks.ts';
import { type MapPlacement, placeMap } from './map-placement.ts';
import type { OutdoorPageInput } from './outdoor-input.ts';
import type { BoxMm, Mark, PointMm } from './page-model.ts';
import type { PlanPageInput } from './plan-input.ts';

const NUMBER_MM = 3.4;
const CROSS_MM = 1.3;
const LETTER_MM = 3.2;

/** A place to be taped, as it is drawn on a sketch. */
export interface SketchedPlace {
  readonly number: number;
  readonly lonLat: LonLat;
  /** Where the tape leaves the line. */
  readonly foot: LonLat;
  /** What it belongs to: a stem, or where a belt is crossed. */
  readonly root: LonLat;
}

/** What is drawn over the sketch: the line to tape from, and the places. */
export interface Sketched {
  readonly line: ReferenceLine;
  readonly places: readonly SketchedPlace[];
  /** Other ground that must lie on the sheet. */
  readonly also: readonly LonLat[];
}

/** The sketch of the ground without its places: what stands there on the day, on a sheet that holds line and places. */
export function outdoorSketch(input: OutdoorPageInput, { line, places, also }: Sketched): PlanPageInput {
  const { around } = input;
  const calendarYear = Number(input.date.slice(0, 4));
  return {
    paper: input.paper,
    orientation: 'portrait',
    scale: 'fit',
    unit: input.unit,
    inking: 'tints',
    siteName: input.siteName,
    layoutName: input.layoutName,
    date: input.madeOn,
    year: 0,
    calendarYear,
    frame: input.frame,
    declinationDeg: input.declinationDeg,
    extent: [line.a.lonLat, line.b.lonLat, ...also, ...places.flatMap(({ lonLat, root }) => [lonLat, root])],
    // A name in the middle of a field would be cut at the frame; the words beside the sketch say which field it is.
    fields: around.fields.map(({ rings }) => ({ label: '', rings })),
    belts: around.belts,
    blocks: around.blocks,
    buildings: around.buildings,
    walls: around.walls,
    patches: [],
    paths: [],
    keepOuts: around.services,
    trees: around.trees.map(({ tag, lonLat, heightM, spreadM }) => ({
      tag,
      name: '',
      lonLat,
      role: 'other' as const,
      planned: false,
      now: null,
      inYear: { heightM, spreadM },
    })),
    ground: null,
    bandMap: null,
    cautions: [],
  };
}

/** The sketch with the line to tape from, the ways to the places and the places, numbered. */
export function drawSketchedPlaces(
  sketch: PlanPageInput,
  { line, places }: Sketched,
  boxMm: BoxMm,
): { marks: Mark[]; placement: MapPlacement } {
  const placement = placeSketch(sketch, boxMm);
  const { onPaper } = placement;
  const [a, b] = [onPaper(line.a.lonLat), onPaper(line.b.lonLat)];
  const marks: Mark[] = [
    { mark: 'line', pointsMm: [a, b], stroke: { ink: LEAF, widthMm: 0.9 } },
    ...places.flatMap((place): Mark[] => {
      const at = onPaper(place.lonLat);
      return [
        { mark: 'line', pointsMm: [onPaper(place.root), at], stroke: { ink: SOFT_INK, widthMm: 0.18 } },
        {
          mark: 'line',
          pointsMm: [onPaper(place.foot), at],
          stroke: { ink: LEAF, widthMm: 0.3, dashMm: [1.4, 0.9] },
        },
      ];
    }),
    ...places.flatMap((place) => placeMarks(place, onPaper(place.lonLat), onPaper(place.root))),
    ...endMarks(a, b, line.a.letter, line.b.letter),
  ];
  return { marks: [...drawMap(sketch, placement), { mark: 'clip', boxMm, marks }], placement };
}

/** Room round the ground in its frame. */
const RIM_MM = 5;

/** At the largest round scale that fits, or one between it and the next: a sketch is read by its figures. */
function placeSketch(sketch: PlanPageInput, boxMm: BoxMm): MapPlacement {
  const round = placeMap(sketch, boxMm);
  for (const share of [0.6, 0.8]) {
    const closer = placeMap({ ...sketch, scale: Math.round(round.scale * share) }, boxMm);
    const fits = (sketch.extent ?? []).every((place) => {
      const [x, y] = closer.onPaper(place);
      const [left, top] = [x - boxMm.xMm, y - boxMm.yMm];
      return (
        left >= RIM_MM && left <= boxMm.widthMm - RIM_MM && top >= RIM_MM && top <= boxMm.heightMm - RIM_MM
      );
    });
    if (fits) return closer;
  }
  return round;
}

/** A cross at the place and its number beyond it, seen from what it belongs to. */
function placeMarks({ number }: SketchedPlace, [x, y]: PointMm, [rx, ry]: PointMm): Mark[] {
  const stroke = { ink: INK, widthMm: 0.5 };
  const away = Math.hypot(x - rx, y - ry) || 1;
  const [ux, uy] = [(x - rx) / away, (y - ry) / away];
  return [
    {
      mark: 'line',
      pointsMm: [
        [x - CROSS_MM, y - CROSS_MM],
        [x + CROSS_MM, y + CROSS_MM],
      ],
      stroke,
    },
    {
      mark: 'line',
      pointsMm: [
        [x - CROSS_MM, y + CROSS_MM],
        [x + CROSS_MM, y - CROSS_MM],
      ],
      stroke,
    },
    {
      mark: 'text',
      atMm: [x + 3.4 * ux, y + 3.4 * uy + NUMBER_MM * 0.36],
      text: String(number),
      sizeMm: NUMBER_MM,
      bold: true,
      ink: INK,
      anchor: 'middle',
      haloMm: 0.6,
    },
  ];
}

/** The lettered ends of the line. */
function endMarks(a: PointMm, b: PointMm, letterA: string, letterB: string): Mark[] {
  return [
    { at: a, letter: letterA },
    { at: b, letter: letterB },
  ].flatMap(({ at, letter }): Mark[] => [
    { mark: 'circle', centreMm: at, radiusMm: 2.6, fill: PAPER, stroke: { ink: LEAF, widthMm: 0.6 } },
    {
      mark: 'text',
      atMm: [at[0], at[1] + LETTER_MM * 0.36],
      text: letter,
      sizeMm: LETTER_MM,
      bold: true,
      ink: INK,
      anchor: 'middle',
    },
  ]);
}
