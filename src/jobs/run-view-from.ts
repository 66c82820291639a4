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

/** The woods of a surface raster, which nobody has drawn. */
const WOODS_AROUND: SceneThing = { id: 'woods-around', kind: 'block', label: 'Woods around' };

/** The horizon from a spot, worked out by one thread: some three quarters of a second of one core for two hundred things around. */
export async function runViewFrom(
  runner: JobRunner,
  { things, ...request }: HorizonRequest,
  options: RunOptions = {},
): Promise<Horizon> {
  const view = await runner.run('view-from', { ...request, thingCount: things.length }, options);
  return { view, things: request.scene.surroundings ? [...things, WOODS_AROUND] : things };
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

/** The hours of the view's month, of the growing season and of the year. */
export function hoursByPeriod(horizon: Horizon): Record<'month' | 'season' | 'year', HoursLost> {
  const months = Array.from({ length: 12 }, (_, month) => month);
  return {
    month: sumOver(horizon, [horizon.view.month]),
    season: sumOver(horizon, [VIEW_SEASON]),
    year: sumOver(horizon, months),
  };
}

function sumOver({ view, things }: Horizon, periods: readonly number[]): HoursLost {
  const { hours } = view;
  const sum = (values: Float32Array, first = 0) =>
    periods.reduce((all, period) => all + values[first + period], 0);
  return {
    open: sum(hours.open),
    got: sum(hours.got),
    toLand: sum(hours.toLand),
    shared: sum(hours.shared),
    toThings: things.map((_, thing) => sum(hours.toThings, thing * VIEW_PERIODS)),
  };
}
