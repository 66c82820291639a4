import type { PlanRequest } from '../windspots/plan-spots.ts';
import type { ScoreRequest, SpotScore } from '../windspots/score-spots.ts';
import type { SpotPlan } from '../windspots/spot-plan.ts';
import type { JobRunner, RunOptions } from './messages.ts';

/**
 * What two hand meters should show behind a belt, worked out by one thread.
 * @throws BadInputError, or over the wire JobError `bad-input`, for a wish that no spot is good for.
 */
export const runSpotPlan = (
  runner: JobRunner,
  request: PlanRequest,
  options: RunOptions = {},
): Promise<SpotPlan> => runner.run('plan-spots', request, options);

/** How far the model missed what was read, and what would explain it, worked out by one thread. */
export const runSpotScore = (
  runner: JobRunner,
  request: ScoreRequest,
  options: RunOptions = {},
): Promise<SpotScore> => runner.run('score-spots', request, options);
