import type { LonLat } from '../../src/geo/frame.ts';
import { destination } from '../../src/geo/geodesic.ts';
import type { SpotWish } from '../../src/windspots/spot-plan.ts';
import { beside, documentOf, HERE, stakedSite, thing } from '../stakes/staked-site.ts';

type Properties = Readonly<Record<string, unknown>>;
const LENGTH_M = 1200;

/** A straight belt of 10 m through HERE, square to a direction, in the middle of its length. */
function beltAcross(fromDeg: number, properties: Properties = {}, centre: LonLat = HERE) {
  const end = (turn: number) => destination(centre, fromDeg + turn, LENGTH_M / 2);
  return thing('b1', 'LineString', [end(-90), end(90)], {
    kind: 'belt',
    name: 'Long belt',
    heightM: 10,
    widthM: 0.01,
    opticalPorosityLeafOn: 0.4,
    opticalPorosityLeafOff: 0.4,
    ...properties,
  });
}

/** A site with such a belt, and whatever else. */
export const beltSite = (properties: Properties = {}, more: readonly unknown[] = [], fromDeg = 270) =>
  stakedSite(documentOf([beltAcross(fromDeg, properties), ...more]));

export const wish = (part: Partial<SpotWish> = {}): SpotWish => ({
  date: '2027-07-10',
  wind: { fromDeg: 270, speedMps: 6 },
  heights: [2, 5, 10, 15],
  alongM: null,
  places: [],
  line: null,
  ...part,
});

export { beside, HERE, thing };
