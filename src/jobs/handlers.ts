import { proposeSearch } from '../belts/propose-job.ts';
import { computeColdAir } from '../choose/cold-air.ts';
import { winterCuts } from '../cuts/cut-job.ts';
import { readGround } from '../geo/read-ground.ts';
import { computeLight, computeLightOnGrids } from '../light/compute-light.ts';
import { computeFirstLastSun } from '../light/first-last-sun.ts';
import { computeLightCost } from '../light/light-cost.ts';
import { computeLightYears } from '../light/light-years.ts';
import { computeViewFrom } from '../light/view-from.ts';
import { computeShelter } from '../wind/compute-shelter.ts';
import { computeShelterAt } from '../wind/shelter-at.ts';
import { computeShelterOnGrids } from '../wind/shelter-on-grids.ts';
import { computeSpotPlan } from '../windspots/plan-spots.ts';
import { computeSpotScore } from '../windspots/score-spots.ts';
import { drive } from './drive.ts';
import { changeLight, holdInLight, keepLight } from './kept-light.ts';
import { followKept } from './kept-shelter.ts';
import type { JobMap, JobName, RunOptions } from './messages.ts';

type Handlers = {
  readonly [N in JobName]: (request: JobMap[N][0], options: RunOptions) => Promise<JobMap[N][1]>;
};

/** What each message does; the same table serves the workers and the thread at hand. */
const HANDLERS: Handlers = {
  light: (request, options) => drive(computeLight(request), options),
  'light-on-grids': (request, options) => drive(computeLightOnGrids(request), options),
  'light-years': (request, options) => drive(computeLightYears(request), options),
  'light-keep': keepLight,
  'light-change': changeLight,
  'light-hold': holdInLight,
  'light-cost': (request, options) => drive(computeLightCost(request), options),
  'first-last-sun': (request, options) => drive(computeFirstLastSun(request), options),
  'view-from': (request, options) => drive(computeViewFrom(request), options),
  shelter: (request, options) => drive(computeShelter(request), options),
  'shelter-on-grids': (request, options) => drive(computeShelterOnGrids(request), options),
  'shelter-follow': followKept,
  'shelter-at': (request, options) => drive(computeShelterAt(request), options),
  'propose-belts': (request, options) => drive(proposeSearch(request), options),
  'winter-cuts': (request, options) => drive(winterCuts(request), options),
  'plan-spots': (request, options) => drive(computeSpotPlan(request), options),
  'score-spots': (request, options) => drive(computeSpotScore(request), options),
  'cold-air': (request, options) => drive(computeColdAir(request), options),
  'ground-file': (request) => readGround(request),
};

export function handleJob<N extends JobName>(
  name: N,
  request: JobMap[N][0],
  options: RunOptions,
): Promise<JobMap[N][1]> {
  return HANDLERS[name](request, options);
}
