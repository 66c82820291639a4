import { contours } from 'd3-contour';
import type { ChosenField } from '../choose/choice.ts';
import type { Enough, FieldStateKey } from '../choose/choose-types.ts';
import { GROUND_KIND_WORDS, GROUND_KINDS, type GroundKind, groundKinds } from '../choose/ground-kinds.ts';
import { type Hatching, hatchLines } from './hatch.ts';
import { INK } from './inks.ts';
import type { Mark, PointMm } from './page-model.ts';
import { textWidthMm } from './text-width.ts';

/** Tint and lines of each kind of ground; the lines tell them apart on a black-and-white printer. */
const KIND_INKS: Readonly<
  Record<GroundKind, { readonly tint: string; readonly hatchings: readonly Hatching[] }>
> = {
  neither: { tint: '#ffffff', hatchings: [] },
  light: { tint: '#f4ecc6', hatchings: [{ angleDeg: 90, spacingMm: 2.4 }] },
  shelter: { tint: '#b0cad2', hatchings: [{ angleDeg: 0, spacingMm: 1.6 }] },
  both: {
    tint: '#8fb59a',
    hatchings: [
      { angleDeg: 45, spacingMm: 1.5 },
      { angleDeg: -45, spacingMm: 1.5 },
    ],
  },
};
const RULE = { ink: INK, widthMm: 0.1 };
const KEY_MM = { width: 6, height: 3, text: 2.6, gap: 4 };

/** Width and height of a field's picture on the ground, m. */
export const pictureSizeM = ({ grid }: ChosenField): readonly [number, number] => [
  grid.columns * grid.cellM,
  grid.rows * grid.cellM,
];

/** A field from above, north up, its ground by what it has enough of in one state. @param mmPerM of the picture's scale. */
export function fieldPicture(
  field: ChosenField,
  state: FieldStateKey,
  enough: Enough,
  [xMm, yMm]: PointMm,
  mmPerM: number,
): Mark[] {
  const maps = field.maps.get(state);
  if (!maps) return [];
  const { grid, mask } = field;
  const kinds = groundKinds(maps, mask, enough);
  const cellMm = grid.cellM * mmPerM;
  /** Rings around cells, an empty cell around the whole so that they close. */
  const ringsAround = (isIn: (cell: number) => boolean): PointMm[][] => {
    const [columns, rows] = [grid.columns + 2, grid.rows + 2];
    const values = Array.from({ length: columns * rows }, (_, k) => {
      const [c, r] = [(k % columns) - 1, Math.floor(k / columns) - 1];
      const outside = c < 0 || r < 0 || c >= grid.columns || r >= grid.rows;
      return !outside && isIn(r * grid.columns + c) ? 1 : 0;
    });
    const { coordinates } = contours().size([columns, rows]).contour(values, 0.5);
    return coordinates
      .flat()
      .map((ring) => ring.map(([c, r]): PointMm => [xMm + (c - 1) * cellMm, yMm + (r - 1) * cellMm]));
  };
  const marks = GROUND_KINDS.flatMap((kind, k) =>
    areaMarks(
      ringsAround((cell) => kinds[cell] === k),
      kind,
    ),
  );
  const outline = ringsAround((cell) => mask[cell] === 1);
  return [...marks, { mark: 'polygon', ringsMm: outline, stroke: { ink: INK, widthMm: 0.3 } }];
}

function areaMarks(rings: readonly (readonly PointMm[])[], kind: GroundKind): Mark[] {
  if (rings.length === 0) return [];
  const { tint, hatchings } = KIND_INKS[kind];
  return [
    { mark: 'polygon', ringsMm: rings, fill: tint },
    ...hatchings.map(
      (hatching): Mark => ({ mark: 'lines', linesMm: hatchLines(rings, hatching), stroke: RULE }),
    ),
  ];
}

/** The key to the pictures, on one line. */
export function pictureKey([xMm, yMm]: PointMm): Mark[] {
  let x = xMm;
  return GROUND_KINDS.flatMap((kind) => {
    const ring: PointMm[] = [
      [x, yMm],
      [x + KEY_MM.width, yMm],
      [x + KEY_MM.width, yMm + KEY_MM.height],
      [x, yMm + KEY_MM.height],
    ];
    const words = GROUND_KIND_WORDS[kind];
    const marks: Mark[] = [
      ...areaMarks([ring], kind),
      { mark: 'polygon', ringsMm: [ring], stroke: { ink: INK, widthMm: 0.18 } },
      {
        mark: 'text',
        atMm: [x + KEY_MM.width + 1.2, yMm + KEY_MM.height - 0.6],
        text: words,
        sizeMm: KEY_MM.text,
        ink: INK,
      },
    ];
    x += KEY_MM.width + 1.2 + textWidthMm(words, KEY_MM.text) + KEY_MM.gap;
    return marks;
  });
}
