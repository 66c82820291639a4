import type { LightYearsRequest, YearLight } from '../light/light-types.ts';
import type { JobRunner, RunOptions } from './messages.ts';
import { runParts } from './split-rows.ts';

/** Light of several years over a whole grid, the years dealt out in turn among the runner's threads. */
export async function runLightYears(
  runner: JobRunner,
  request: LightYearsRequest,
  options: RunOptions = {},
): Promise<YearLight[]> {
  const { years } = request;
  const threads = Math.min(runner.threads, years.length);
  const deals = Array.from({ length: threads }, (_, first) =>
    years.filter((_, year) => year % threads === first),
  );
  const parts = await runParts(
    deals,
    (deal) => deal.length,
    options,
    (deal, run) => runner.run('light-years', { ...request, years: deal }, run),
  );
  return years.map((_, year) => parts[year % threads][Math.floor(year / threads)]);
}
