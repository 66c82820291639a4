import type { FirstLastSun, FirstLastSunRequest } from '../light/first-last-sun-types.ts';
import type { JobRunner, RunOptions } from './messages.ts';
import { joinLayers, runBands } from './split-rows.ts';

const MONTHS = 12;

/** First and last sun over a whole grid, its rows shared out among the runner's threads. */
export async function runFirstLastSun(
  runner: JobRunner,
  request: FirstLastSunRequest,
  options: RunOptions = {},
): Promise<FirstLastSun> {
  const parts = await runBands(runner, request.grid, options, (grid, bandOptions) =>
    runner.run('first-last-sun', { ...request, grid }, bandOptions),
  );
  const joined = (of: (part: FirstLastSun) => Float32Array) => joinLayers(parts.map(of), MONTHS);
  return {
    grid: request.grid,
    firstMin: joined((part) => part.firstMin),
    lastMin: joined((part) => part.lastMin),
    sunHours: joined((part) => part.sunHours),
    days: parts[0].days,
  };
}
