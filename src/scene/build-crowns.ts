import { CROWN_FORMS, CROWN_STRIDE, type CrownSet } from '../crowns/crown-set.ts';
import { type Frame, toLocal } from '../geo/frame.ts';
import type { Grid } from '../numeric/grid.ts';
import type { FeatureOf } from '../site/document.ts';
import { groundAt } from './ground-at.ts';
import type { LeafClasses } from './leaf-phases.ts';

import type { TreeStand } from './stand-at-year.ts';

export interface StandingTree {
  readonly thing: number;
  readonly feature: FeatureOf<'tree'>;
  readonly stand: TreeStand;
}

/** The crowns of all trees that stand, as arrays (see CrownSet). */
export function buildCrowns(
  trees: readonly StandingTree[],
  frame: Frame,
  ground: Grid,
  leafClasses: LeafClasses,
): CrownSet {
  const values = new Float64Array(trees.length * CROWN_STRIDE);
  trees.forEach(({ feature, stand }, i) => {
    const [lon, lat] = feature.geometry.coordinates;
    const [x, y] = toLocal(frame, [lon, lat]);
    values.set(
      [
        x,
        y,
        groundAt(ground, x, y),
        stand.baseM,
        stand.heightM,
        stand.radiusM,
        stand.depthPerMOn,
        stand.depthPerMOff,
      ],
      i * CROWN_STRIDE,
    );
  });
  return {
    count: trees.length,
    values,
    form: Uint8Array.from(trees, ({ stand }) => CROWN_FORMS.indexOf(stand.form)),
    leafClass: Uint8Array.from(trees, ({ stand }) => leafClasses.indexOf(stand.calendar)),
    thing: Uint16Array.from(trees, ({ thing }) => thing),
  };
}
