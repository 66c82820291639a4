import type { LightScene } from '../light/light-types.ts';
import { VIEW_PERIODS, VIEW_SEASON, type ViewFrom } from '../light/view-from-types.ts';
import type { SceneThing } from '../scene/options.ts';
import type { JobRunner, RunOptions } from './messages.ts';

/** The view from a spot, with the names of what is seen. */
export interface Horizon {
  readonly view: ViewFrom;
  /** What the view's `thing` indices stand for. */
  readonly things: readonly SceneThing[];
}

export interface HorizonRequest {
  readonly scene: LightScene;
  readonly things: readonly SceneThing[];
  /** The spot, local frame. */
  readonly xM: number;
  readonly yM: number;
  readonly readingHeightM: number;
  /** 0 = January. */
  readonly month: number;
}

/** The horizon from a spot, worked out by one thread: a third of a second for two hundred things. */
export async function runViewFrom(
  runner: JobRunner,
  { things, ...request }: HorizonRequest,
  options: RunOptions = {},
): Promise<Horizon> {
  const view = await runner.run('view-from', { ...request, thingCount: things.length }, options);
  return { view, things };
}

/** Hours of sun in one period: open = got + those of the things + toLand + shared (see ViewHours). */
export interface HoursLost {
  readonly open: number;
  readonly got: number;
  readonly toLand: number;
  readonly shared: number;
  /** By index of the thing. */
  readonly toThings: readonly number[];
}

/** The hours of the growing season, the year or one month (0 = January). */
export function hoursLost({ view, things }: Horizon, period: 'season' | 'year' | number): HoursLost {
  const { hours } = view;
  const sum = (values: Float32Array, at = 0): number => {
    if (period === 'season') return values[at + VIEW_SEASON];
    if (period !== 'year') return values[at + period];
    let year = 0;
    for (let month = 0; month < 12; month++) year += values[at + month];
    return year;
  };
  return {
    open: sum(hours.open),
    got: sum(hours.got),
    toLand: sum(hours.toLand),
    shared: sum(hours.shared),
    toThings: things.map((_, thing) => sum(hours.toThings, thing * VIEW_PERIODS)),
  };
}
