import type { SearchRequest, SearchResult } from '../belts/propose-job.ts';
import type { ColdAir, ColdAirScene } from '../choose/cold-air.ts';
import type { CutsRequest, CutsResult } from '../cuts/cut-job.ts';
import type { FirstLastSun, FirstLastSunRequest } from '../light/first-last-sun-types.ts';
import type {
  LightCostRequest,
  LightCostResult,
  LightOnGridsRequest,
  LightRequest,
  LightResult,
  LightScene,
  LightYearsRequest,
  YearLight,
} from '../light/light-types.ts';
import type { ViewFrom, ViewFromRequest } from '../light/view-from-types.ts';
import type { ShelterAt, ShelterAtRequest } from '../wind/shelter-at-types.ts';
import type {
  HeldShelterRequest,
  ShelterOnGridsRequest,
  ShelterRequest,
  ShelterResult,
} from '../wind/shelter-types.ts';
import type { PlanRequest } from '../windspots/plan-spots.ts';
import type { ScoreRequest, SpotScore } from '../windspots/score-spots.ts';
import type { SpotPlan } from '../windspots/spot-plan.ts';
import type { GroundFileJob, GroundFileResult } from './ground-file.ts';

/** A computation of light that stays in the worker under a number, so that it can be changed. */
export interface KeepLightRequest extends LightRequest {
  readonly fieldId: number;
}

/** Other things in a kept field of light; all else of its scene is as it was. */
export interface LightChange extends Pick<LightScene, 'crowns' | 'prisms'> {
  readonly fieldId: number;
  /** Along fewer rays, while a hand moves. */
  readonly live: boolean;
}

/** A thing of a kept field that a hand takes up: a change of it then costs its own shadow alone. */
export interface LightHold {
  readonly fieldId: number;
  readonly thing: number;
}

/** The only thing that crosses to a worker: message name -> [request, result]. */
export interface JobMap {
  light: [LightRequest, LightResult];
  'light-on-grids': [LightOnGridsRequest, LightResult[]];
  'light-years': [LightYearsRequest, YearLight[]];
  'light-keep': [KeepLightRequest, LightResult];
  'light-change': [LightChange, LightResult | null];
  'light-hold': [LightHold, boolean];
  'light-cost': [LightCostRequest, LightCostResult];
  'first-last-sun': [FirstLastSunRequest, FirstLastSun];
  'view-from': [ViewFromRequest, ViewFrom];
  shelter: [ShelterRequest, ShelterResult];
  'shelter-on-grids': [ShelterOnGridsRequest, ShelterResult[]];
  'shelter-follow': [HeldShelterRequest, ShelterResult];
  'shelter-at': [ShelterAtRequest, ShelterAt];
  'propose-belts': [SearchRequest, SearchResult];
  'winter-cuts': [CutsRequest, CutsResult];
  'plan-spots': [PlanRequest, SpotPlan];
  'score-spots': [ScoreRequest, SpotScore];
  'cold-air': [ColdAirScene, ColdAir];
  'ground-file': [GroundFileJob, GroundFileResult];
}
export type JobName = keyof JobMap;

export type JobErrorCode = 'cancelled' | 'bad-input' | 'crashed' | 'failed';

/** An error that has crossed from a job, with a code. `bad-input` messages are fit to be read by a person. */
export class JobError extends Error {
  readonly code: JobErrorCode;
  constructor(code: JobErrorCode, message: string) {
    super(message);
    this.name = 'JobError';
    this.code = code;
  }
}

export interface RunOptions {
  readonly signal?: AbortSignal;
  readonly onProgress?: (done: number) => void;
  /** Which of the threads, counted from 0; without: any. */
  readonly seat?: number;
}

/** Runs jobs: in this thread (local) or over a pool of workers (remote), with the same answers. */
export interface JobRunner {
  readonly threads: number;
  run<N extends JobName>(name: N, request: JobMap[N][0], options?: RunOptions): Promise<JobMap[N][1]>;
  dispose(): void;
}
