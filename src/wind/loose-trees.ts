import type { Barrier } from '../crowns/barrier.ts';
import {
  CROWN_BASE,
  CROWN_DEPTH_OFF,
  CROWN_DEPTH_ON,
  CROWN_FORMS,
  CROWN_RADIUS,
  CROWN_STRIDE,
  CROWN_TOP,
  CROWN_X,
  CROWN_Y,
  type CrownForm,
  type CrownSet,
} from '../crowns/crown-set.ts';
import { youngStrength } from './barrier-effects.ts';
import { boundsOf, distanceToRing, stripRing } from './footprint.ts';
import type { ShelterOptions } from './shelter-types.ts';

/** A tree that stands by itself, as a body that slows the wind. */
export interface LooseTree {
  readonly xM: number;
  readonly yM: number;
  readonly topM: number;
  /** Silhouette seen along the wind less what shows through it, m2, in full leaf and leafless. */
  readonly areaOnM2: number;
  readonly areaOffM2: number;
  /** The silhouette itself, m2. */
  readonly outlineM2: number;
  readonly leafClass: number;
}

/** Gauss-Legendre quadrature over 0 to 1 in eight places: place, weight (Abramowitz & Stegun, table 25.4). */
const EIGHT_PLACES = [
  [0.1834346424956498, 0.362683783378362],
  [0.525532409916329, 0.3137066458778873],
  [0.7966664774136267, 0.2223810344533745],
  [0.9602898564975363, 0.1012285362903763],
].flatMap(([x, weight]) => [
  [(1 - x) / 2, weight / 2],
  [(1 + x) / 2, weight / 2],
]);

/** Radius of a crown at a height given as a share from its base (0) to its top (1), in crown radii. */
function radiusAt(form: CrownForm, level: number): number {
  if (form === 'ellipsoid') return Math.sqrt(Math.max(0, 1 - (2 * level - 1) ** 2));
  if (form === 'dome') return Math.sqrt(Math.max(0, 1 - level * level));
  return form === 'cone' ? 1 - level : 1;
}

/** Silhouette of a crown from the side above `fromM`, m2, and what of it is closed at two depths per metre. */
function silhouette(
  form: CrownForm,
  baseM: number,
  topM: number,
  radiusM: number,
  fromM: number,
  depths: readonly [number, number],
): { outline: number; closed: [number, number] } {
  const from = Math.min(1, Math.max(0, (fromM - baseM) / (topM - baseM)));
  let outline = 0;
  const closed: [number, number] = [0, 0];
  // By angles, so that the integrand is smooth where the outline turns round.
  for (const [up, upWeight] of EIGHT_PLACES) {
    const angle = Math.PI * up;
    const radius = radiusM * radiusAt(form, from + ((1 - from) * (1 - Math.cos(angle))) / 2);
    const heightM = (topM - baseM) * (1 - from) * (Math.PI / 2) * Math.sin(angle) * upWeight;
    for (const [aside, asideWeight] of EIGHT_PLACES) {
      const chord = Math.cos((Math.PI / 2) * aside);
      const areaM2 = 2 * radius * heightM * (Math.PI / 2) * chord * asideWeight;
      outline += areaM2;
      for (const state of [0, 1])
        closed[state] += areaM2 * (1 - Math.exp(-depths[state] * 2 * radius * chord));
    }
  }
  return { outline, closed };
}

/** Ground that a barrier, or a straight piece of it, stands on. */
interface Footing {
  readonly ring: Float64Array;
  readonly bounds: readonly [west: number, south: number, east: number, north: number];
  readonly topM: number;
}

const footingsOf = ({ shape, xyM, heightM, widthM }: Barrier): Footing[] => {
  const footing = (ring: Float64Array, topM: number) => ({ ring, bounds: boundsOf(ring), topM });
  if (shape === 'area') return [footing(xyM, Math.max(...heightM))];
  if (!(widthM > 0)) return [];
  return Array.from({ length: xyM.length / 2 - 1 }, (_, i) =>
    footing(
      stripRing(xyM[2 * i], xyM[2 * i + 1], xyM[2 * i + 2], xyM[2 * i + 3], widthM),
      Math.max(heightM[i], heightM[i + 1]),
    ),
  );
};

/** Height of the tallest barrier on whose ground a stem stands, 0 in the open. */
function topOverStem(footings: readonly Footing[], x: number, y: number): number {
  let top = 0;
  for (const { ring, bounds, topM } of footings) {
    if (topM <= top || x < bounds[0] || y < bounds[1] || x > bounds[2] || y > bounds[3]) continue;
    if (distanceToRing(x, y, ring) === 0) top = topM;
  }
  return top;
}

/**
 * The trees that slow the wind by themselves. Of a tree that stands in a belt, block or building only what rises above
 * it counts, so that nothing counts twice; a tree at the reading height does nothing and from twice that height all, as
 * belts do (our guess for young belts).
 * @param barriers those that act on the wind.
 */
export function looseTrees(
  crowns: CrownSet,
  barriers: readonly Barrier[],
  readingHeightM: number,
  options: ShelterOptions,
): LooseTree[] {
  const trees: LooseTree[] = [];
  const footings = barriers.flatMap(footingsOf);
  for (let i = 0; i < crowns.count; i++) {
    const value = (column: number) => crowns.values[i * CROWN_STRIDE + column];
    const topM = value(CROWN_TOP);
    const baseM = value(CROWN_BASE);
    const strength = youngStrength(topM, readingHeightM, options);
    const coveredM = topOverStem(footings, value(CROWN_X), value(CROWN_Y));
    if (!(topM > Math.max(baseM, coveredM)) || strength === 0) continue;
    const { outline, closed } = silhouette(
      CROWN_FORMS[crowns.form[i]],
      baseM,
      topM,
      value(CROWN_RADIUS),
      coveredM,
      [value(CROWN_DEPTH_ON), value(CROWN_DEPTH_OFF)],
    );
    if (!(outline > 0)) continue;
    trees.push({
      xM: value(CROWN_X),
      yM: value(CROWN_Y),
      topM,
      areaOnM2: strength * closed[0],
      areaOffM2: strength * closed[1],
      outlineM2: strength * outline,
      leafClass: crowns.leafClass[i],
    });
  }
  return trees;
}
