import { drawBands } from './draw-bands.ts';
import { drawContours } from './draw-contours.ts';
import { INK, PAPER, SOFT_INK } from './inks.ts';
import type { MapPlacement } from './map-placement.ts';
import type { Mark, PointMm, TextMark } from './page-model.ts';
import type { LinedThing, OutlinedThing, PlanPageInput, PlanTree } from './plan-input.ts';
import { SIGNS, type Sign, signOfTree } from './signs.ts';
import { textWidthMm } from './text-width.ts';
import { valueLines } from './value-lines.ts';

const TAG_MM = 2.5;
const NAME_MM = 2.8;
/** A crown narrower than this has its tag beside it. */
const TAG_INSIDE_RADIUS_MM = 2.2;

/** The map inside its frame: ground first, then what stands on it, then the names. */
export function drawMap(input: PlanPageInput, placement: MapPlacement): Mark[] {
  const { onPaper, boxMm } = placement;
  const areas = (things: readonly OutlinedThing[], sign: Sign): Mark[] =>
    things.map((thing) => ({
      mark: 'polygon',
      ringsMm: thing.rings.map((ring) => ring.map(onPaper)),
      // Without tints only what is solid stays filled.
      fill: input.inking === 'ink' && !sign.solid ? undefined : sign.fill,
      stroke: sign.stroke,
    }));
  const lines = (things: readonly LinedThing[], sign: Sign): Mark[] =>
    things.map((thing) => ({ mark: 'line', pointsMm: thing.line.map(onPaper), stroke: sign.stroke }));
  const standing = input.belts.filter((belt) => !belt.planned);
  const planned = input.belts.filter((belt) => belt.planned);

  const marks: Mark[] = [
    ...(input.bandMap ? drawBands(input.bandMap, input, placement) : []),
    ...(input.ground ? drawContours(input.ground, input, placement) : []),
    ...(input.bandMap ? valueLines(input.bandMap, input, placement) : []),
    ...lines(input.paths, SIGNS.path),
    ...areas(input.blocks, SIGNS.block),
    ...areas(standing, SIGNS.belt),
    ...areas(planned, SIGNS.plannedBelt),
    ...areas(input.walls, SIGNS.wall),
    ...areas(input.buildings, SIGNS.building),
    ...lines(input.keepOuts, SIGNS.keepOut),
    ...areas(input.patches, SIGNS.patch),
    ...areas(input.fields, SIGNS.field),
    ...input.trees.flatMap((tree) => drawTree(tree, placement)),
    ...input.fields.flatMap((field) => nameOf(field, placement, true)),
    ...input.patches.flatMap((patch) => nameOf(patch, placement, false)),
    ...input.trees.map((tree) => tagOf(tree, placement)),
  ];
  return [
    { mark: 'clip', boxMm, marks },
    {
      mark: 'polygon',
      ringsMm: [
        [
          [boxMm.xMm, boxMm.yMm],
          [boxMm.xMm + boxMm.widthMm, boxMm.yMm],
          [boxMm.xMm + boxMm.widthMm, boxMm.yMm + boxMm.heightMm],
          [boxMm.xMm, boxMm.yMm + boxMm.heightMm],
        ],
      ],
      stroke: { ink: INK, widthMm: 0.3 },
    },
  ];
}

/** The crown at its spread in the plan's year; a cross where it is not there in that year. */
function drawTree(tree: PlanTree, placement: MapPlacement): Mark[] {
  const centreMm = placement.onPaper(tree.lonLat);
  if (!tree.inYear) {
    const [x, y] = centreMm;
    const stroke = { ink: SOFT_INK, widthMm: 0.2 };
    return [
      {
        mark: 'line',
        pointsMm: [
          [x - 0.8, y],
          [x + 0.8, y],
        ],
        stroke,
      },
      {
        mark: 'line',
        pointsMm: [
          [x, y - 0.8],
          [x, y + 0.8],
        ],
        stroke,
      },
    ];
  }
  return [
    {
      mark: 'circle',
      centreMm,
      radiusMm: placement.paperMm(tree.inYear.spreadM / 2),
      stroke: SIGNS[signOfTree(tree)].stroke,
    },
    // The stem: full where the tree stands today, open where it is planned.
    {
      mark: 'circle',
      centreMm,
      radiusMm: 0.35,
      fill: tree.planned ? PAPER : INK,
      stroke: { ink: INK, widthMm: 0.15 },
    },
  ];
}

function tagOf(tree: PlanTree, placement: MapPlacement): TextMark {
  const [x, y] = placement.onPaper(tree.lonLat);
  const radiusMm = tree.inYear ? placement.paperMm(tree.inYear.spreadM / 2) : 0;
  const inside = radiusMm >= Math.max(TAG_INSIDE_RADIUS_MM, textWidthMm(tree.tag, TAG_MM, true) / 2 + 0.4);
  return {
    mark: 'text',
    atMm: inside ? [x, y - 0.7] : [x + radiusMm + 0.6, y + TAG_MM * 0.35],
    text: tree.tag,
    sizeMm: TAG_MM,
    bold: true,
    ink: INK,
    anchor: inside ? 'middle' : 'start',
    haloMm: 0.35,
  };
}

/** The name of an area, on its middle; a field's along its upper edge, where fewer things stand. */
function nameOf(thing: OutlinedThing, placement: MapPlacement, atTop: boolean): Mark[] {
  if (thing.label === '' || thing.rings.length === 0) return [];
  const ring = thing.rings[0].map(placement.onPaper);
  const [x, y] = middleOf(ring);
  const top = Math.min(...ring.map((point) => point[1]));
  return [
    {
      mark: 'text',
      atMm: [x, atTop ? Math.max(top + 5, placement.boxMm.yMm + 5) : y],
      text: thing.label,
      sizeMm: atTop ? NAME_MM * 1.2 : NAME_MM,
      bold: atTop,
      ink: INK,
      anchor: 'middle',
      haloMm: 0.5,
    },
  ];
}

/** Centre of gravity of a ring. */
function middleOf(ring: readonly PointMm[]): PointMm {
  let [area, x, y] = [0, 0, 0];
  const [ox, oy] = ring[0];
  for (let i = 0; i < ring.length; i++) {
    const [px, py] = [ring[i][0] - ox, ring[i][1] - oy];
    const next = ring[(i + 1) % ring.length];
    const [qx, qy] = [next[0] - ox, next[1] - oy];
    const cross = px * qy - qx * py;
    area += cross;
    x += (px + qx) * cross;
    y += (py + qy) * cross;
  }
  return area === 0 ? ring[0] : [ox + x / (3 * area), oy + y / (3 * area)];
}
