/** The small picture beside the figures of a cell: the same on the screen and on paper. */
import type { FieldFigures, FieldStateKey } from './choose-types.ts';
import type { Measure } from './measure-types.ts';

/** Bars, one a state, 0 to 1 of the row's longest or of the whole (null: no figure, so no bar); or the way down a slope. */
export type CellPicture = { readonly shares: readonly (number | null)[] } | { readonly towardsDeg: number };

/** Bars of one row: shares are of the whole, anything else is of the most that a field has. Below nothing there is no bar. */
export function barsOf(
  figures: readonly (readonly (number | null)[])[],
  ofWhole: boolean,
): readonly CellPicture[] {
  const known = (value: number | null): value is number => value !== null && Number.isFinite(value);
  const most = ofWhole ? 1 : Math.max(0, ...figures.flat().filter(known));
  return figures.map((cell) => ({
    shares: cell.map((value) =>
      known(value) ? (most > 0 ? Math.min(1, Math.max(0, value / most)) : 0) : null,
    ),
  }));
}

/** The pictures of a measure's row, one a field. */
export function measurePictures(
  measure: Measure,
  fields: readonly FieldFigures[],
  wanted: readonly FieldStateKey[],
): readonly (CellPicture | null)[] {
  const states: readonly FieldStateKey[] = measure.byState ? wanted : ['stands'];
  const figures = fields.map((field) => states.map((state) => measure.of(field, state)));
  if (measure.unit === 'bearing')
    return figures.map(([towardsDeg]) => (towardsDeg === null ? null : { towardsDeg }));
  return barsOf(figures, measure.unit === 'share');
}

type Point = readonly [x: number, y: number];

/** What a picture is drawn of, y down: shapes to fill, and the line that bars start from; null: there are none. */
export interface CellShapes {
  readonly filled: readonly (readonly Point[])[];
  readonly from: readonly [Point, Point] | null;
}

const box = (left: number, top: number, right: number, bottom: number): Point[] => [
  [left, top],
  [right, top],
  [right, bottom],
  [left, bottom],
];

/** Share of a bar's place that stays free beside it. */
const BETWEEN_BARS = 0.25;
/** Half the tail of an arrow, as an angle from its way. */
const TAIL_RAD = (145 * Math.PI) / 180;

/** One figure lies as a bar from the left; several stand as bars side by side; a way is an arrow, north up. */
export function cellShapes(picture: CellPicture, width: number, height: number): CellShapes {
  if ('towardsDeg' in picture) {
    const rad = (picture.towardsDeg * Math.PI) / 180;
    const at = (turn: number, reach: number): Point => [
      height / 2 + reach * Math.sin(rad + turn),
      height / 2 - reach * Math.cos(rad + turn),
    ];
    const reach = height / 2;
    return {
      filled: [[at(0, reach), at(TAIL_RAD, reach), at(Math.PI, reach / 3), at(-TAIL_RAD, reach)]],
      from: null,
    };
  }
  const { shares } = picture;
  if (shares.length === 1) {
    const [share] = shares;
    const filled = share === null || share === 0 ? [] : [box(0, 0.3 * height, share * width, 0.75 * height)];
    return {
      filled,
      from: [
        [0, 0.1 * height],
        [0, 0.95 * height],
      ],
    };
  }
  const step = width / shares.length;
  return {
    filled: shares.flatMap((share, k) =>
      share === null || share === 0
        ? []
        : [box(k * step, (1 - share) * height, (k + 1 - BETWEEN_BARS) * step, height)],
    ),
    from: [
      [0, height],
      [width, height],
    ],
  };
}
