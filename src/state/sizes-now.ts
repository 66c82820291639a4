import { growPlan } from '../scene/grow-plan.ts';
import type { GrownThing } from '../scene/grown-plan.ts';
import type { FeatureId } from '../site/document.ts';
import type { AppState } from './model.ts';

/** What stands at the end of the plan's first season, by feature. */
export const sizesNow = (
  state: Pick<AppState, 'document' | 'frame' | 'layout'>,
): ReadonlyMap<FeatureId, GrownThing> =>
  new Map(
    growPlan(state.document, { year: 0, layout: state.layout, pace: 'usual', frame: state.frame }).things.map(
      (thing) => [thing.id, thing],
    ),
  );
