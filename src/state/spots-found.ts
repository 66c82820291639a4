import type { Frame } from '../geo/frame.ts';
import type { FeatureId } from '../site/document.ts';
import type { SpotScore } from '../windspots/score-spots.ts';
import type { SpotPlan } from '../windspots/spot-plan.ts';

/** Whose spots were worked out; the frame tells one site from the next, whose ids may be the same. */
interface OfBelt {
  readonly of: FeatureId;
  readonly frame: Frame;
}

export interface SpotPlanFound extends OfBelt {
  readonly plan: SpotPlan;
}

export interface SpotScoreFound extends OfBelt {
  readonly score: SpotScore;
}
