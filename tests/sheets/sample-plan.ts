import { frameAt, type LonLat, toLocal } from '../../src/geo/frame.ts';
import { destination } from '../../src/geo/geodesic.ts';
import { type Grid, gridCovering } from '../../src/numeric/grid.ts';
import type { PlanPageInput, PlanTree } from '../../src/sheets/plan-input.ts';
import { LIGHT_BANDS } from '../../src/units/bands.ts';

/** A place `eastM` and `northM` from another, along true directions. */
export function offset(from: LonLat, eastM: number, northM: number): LonLat {
  const azimuthDeg = (Math.atan2(eastM, northM) * 180) / Math.PI;
  return destination(from, azimuthDeg, Math.hypot(eastM, northM));
}

const rectangleAround = (centre: LonLat, halfEastM: number, halfNorthM: number): LonLat[] => [
  offset(centre, -halfEastM, -halfNorthM),
  offset(centre, halfEastM, -halfNorthM),
  offset(centre, halfEastM, halfNorthM),
  offset(centre, -halfEastM, halfNorthM),
];

/** Values by east and north of the centre, one metre cells, over a box in the frame. */
function gridAround(centre: LonLat, halfM: number, value: (east: number, north: number) => number): Grid {
  const frame = frameAt(centre);
  const [x, y] = toLocal(frame, centre);
  const spec = gridCovering({ west: x - halfM, south: y - halfM, east: x + halfM, north: y + halfM }, 1);
  const values = new Float32Array(spec.columns * spec.rows);
  for (let row = 0; row < spec.rows; row++)
    for (let column = 0; column < spec.columns; column++)
      values[row * spec.columns + column] = value(spec.westM + column + 0.5 - x, spec.northM - row - 0.5 - y);
  return { ...spec, values };
}

/** A plan with a bit of everything, invented. */
export function samplePlan(centre: LonLat, changes: Partial<PlanPageInput> = {}): PlanPageInput {
  const trees: PlanTree[] = Array.from({ length: 12 }, (_, i) => ({
    tag: `${'NFS'[i % 3]}${i + 1}`,
    name: ['Juglans regia', 'Malus domestica ‘Discovery’', 'Alnus cordata'][i % 3],
    lonLat: offset(centre, -40 + (i % 4) * 24, 25 - Math.floor(i / 4) * 26),
    role: (['nut', 'fruit', 'nurse'] as const)[i % 3],
    planned: i > 4,
    now: i > 4 ? null : { heightM: 2.1, spreadM: 1.4 },
    inYear: i === 11 ? null : { heightM: 7 + (i % 3), spreadM: 5 + (i % 4) },
  }));
  return {
    paper: 'A4',
    orientation: 'landscape',
    scale: 'fit',
    unit: 'm',
    inking: 'tints',
    siteName: 'Sorrel Bank',
    layoutName: null,
    date: '3 March 2027',
    year: 20,
    calendarYear: 2047,
    frame: frameAt(centre),
    declinationDeg: -16.4,
    fields: [{ label: 'Upper Lea', rings: [rectangleAround(centre, 60, 42)] }],
    belts: [
      { label: 'Spruce belt', rings: [rectangleAround(offset(centre, -57, 0), 2.5, 40)] },
      { label: 'Alder belt', rings: [rectangleAround(offset(centre, 0, 38), 50, 2)], planned: true },
    ],
    blocks: [],
    buildings: [{ label: 'Shed', rings: [rectangleAround(offset(centre, 48, -34), 5, 3)] }],
    walls: [],
    patches: [{ label: 'Herb ground', rings: [rectangleAround(offset(centre, 20, -12), 12, 8)] }],
    paths: [{ label: 'Track', line: [offset(centre, -60, -20), offset(centre, 60, -36)] }],
    keepOuts: [],
    trees,
    ground: gridAround(centre, 90, (east, north) => 60 + 0.06 * north + 0.02 * east + 0.0004 * east * east),
    bandMap: {
      grid: gridAround(centre, 70, (east, north) =>
        Math.min(1, 0.2 + Math.hypot(east + 50, north * 0.8) / 100),
      ),
      bands: LIGHT_BANDS,
      detail: 'growing season, 0.1 m above the ground',
      lines: [{ value: 0.4, label: '40 %', words: '40 %, the light to keep' }],
      supposed: null,
      whatWouldChange: 'If crowns grow a fifth wider: 12 % darker.',
    },
    cautions: [
      'An estimate, not a guarantee: sizes and light in future years depend on soil, weather and care. Ask about local rules on tree heights, boundaries and buried services before planting.',
      'A shelter or shade figure never means that a tree is sound.',
    ],
    ...changes,
  };
}
