import { hoursByPeriod } from '../../src/jobs/run-view-from.ts';
import { computeViewFrom } from '../../src/light/view-from.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import type { SceneThing } from '../../src/scene/options.ts';
import type { HorizonPageInput } from '../../src/sheets/horizon-input.ts';
import { type DrawnCrown, type DrawnPiece, plainScene } from '../light/plain-scene.ts';

interface Named {
  readonly label: string;
  readonly crown?: DrawnCrown;
  readonly piece?: DrawnPiece;
}

/** A tall pine to the south, a hedge to the west, a barn to the north-east, invented. */
export const SAMPLE_THINGS: readonly Named[] = [
  { label: 'Tall pine', crown: { x: 0, y: -14, base: 2, top: 15, radius: 3.5, depthOn: 0.4 } },
  { label: 'Hedge', piece: { ring: [-13, -20, -10, -20, -10, 20, -13, 20], top: 5, depthOn: 0.2 } },
  { label: 'Barn', piece: { ring: [14, 8, 26, 8, 26, 16, 14, 16], top: 6 } },
];

/** The horizon around the origin of a drawn scene, as the page takes it. */
export function sampleHorizon(
  named: readonly Named[] = SAMPLE_THINGS,
  place: { readonly latDeg?: number; readonly month?: number } = {},
  changes: Partial<HorizonPageInput> = {},
): HorizonPageInput {
  const { latDeg = 45, month = 6 } = place;
  const crowns = named.flatMap(({ crown }, thing) => (crown ? [{ ...crown, thing }] : []));
  const pieces = named.flatMap(({ piece }, thing) => (piece ? [{ ...piece, thing }] : []));
  const scene = plainScene({ latDeg, crowns, pieces });
  const view = runToEnd(
    computeViewFrom({ scene, xM: 0, yM: 0, readingHeightM: 0.5, thingCount: named.length, month }),
  );
  const things = named.map(({ label }, thing): SceneThing => ({ id: `t${thing}`, kind: 'tree', label }));
  return {
    view,
    things,
    hours: hoursByPeriod({ view, things }),
    seasonWords: 'April–September',
    declinationDeg: -16,
    paper: 'A4',
    unit: 'm',
    siteName: 'Sorrel Bank',
    layoutName: null,
    date: '3 March 2027',
    year: 20,
    calendarYear: 2047,
    lonLat: [-64.5, 45.1],
    findIt: ['12.30 m from the north-west corner of Pound Field, towards 135° (needle 151°).'],
    assumed: [],
    ...changes,
  };
}
