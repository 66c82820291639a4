import { frameAt, toLocal } from '../geo/frame.ts';
import { chosenFeatures, featuresOfKind } from './chosen-features.ts';
import type { FeatureId, FeatureOf, SiteDocument } from './document.ts';
import { firstPlace } from './places.ts';
import type { XY } from './plane-geometry.ts';

/** A neighbour in a row stands no farther than this, m: wider than any usual spacing. */
const WIDEST_SPACING_M = 30;
/** A row goes on where a tree stands within this share of the spacing from where the next one should. */
const OFF_LINE_SHARE = 0.3;
/** Fewer are no row. */
const LEAST_TREES = 3;

interface Stem {
  readonly id: FeatureId;
  readonly at: XY;
  readonly order: number;
}

/**
 * The trees of one species that stand in a row with a tree, itself among them, from one end to the other; empty where
 * fewer than three do. Rows are not kept in the file: the nearest neighbour gives spacing and direction, and the row
 * goes on, bends included, as long as a tree stands about where the next one should.
 */
export function rowOfTree(
  document: SiteDocument,
  layout: string | null,
  tree: FeatureOf<'tree'>,
): FeatureId[] {
  const frame = frameAt(firstPlace(tree.geometry.coordinates));
  const stems = featuresOfKind(chosenFeatures(document, layout), 'tree')
    .filter(({ properties }) => properties.species === tree.properties.species)
    .map(
      ({ id, geometry }, order): Stem => ({
        id,
        at: toLocal(frame, firstPlace(geometry.coordinates)),
        order,
      }),
    );
  const own = stems.find(({ id }) => id === tree.id);
  if (!own) return [];
  const neighbours = stems
    .filter((stem) => stem !== own && apartM(own.at, stem.at) <= WIDEST_SPACING_M)
    // Of two as near, the one that was planted next to it.
    .sort(
      (a, b) =>
        Math.round(10 * apartM(own.at, a.at)) - Math.round(10 * apartM(own.at, b.at)) ||
        Math.abs(a.order - own.order) - Math.abs(b.order - own.order),
    );
  for (const next of neighbours) {
    const onward = [own, next, ...goingOn(stems, own, next)];
    const row = [...goingOn(stems, next, own).toReversed(), ...onward];
    if (row.length >= LEAST_TREES) return row.map(({ id }) => id);
  }
  return [];
}

const apartM = (a: XY, b: XY): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** The trees of the row after `last`, coming from `before`. */
function goingOn(stems: readonly Stem[], before: Stem, last: Stem): Stem[] {
  const found: Stem[] = [];
  const taken = new Set([before, last]);
  let [from, to] = [before, last];
  for (;;) {
    const expected: XY = [2 * to.at[0] - from.at[0], 2 * to.at[1] - from.at[1]];
    const reachM = OFF_LINE_SHARE * apartM(from.at, to.at);
    let next: Stem | null = null;
    let nearestM = reachM;
    for (const stem of stems) {
      const offM = apartM(stem.at, expected);
      if (offM <= nearestM && !taken.has(stem)) {
        next = stem;
        nearestM = offM;
      }
    }
    if (!next) return found;
    found.push(next);
    taken.add(next);
    [from, to] = [to, next];
  }
}
