import type { LightRequest, LightResult } from '../light/light-types.ts';
import type { JobRunner, RunOptions } from './messages.ts';
import { joinLayers, runBands } from './split-rows.ts';

/** Light over a whole grid, its rows shared out among the runner's threads. */
export async function runLight(
  runner: JobRunner,
  request: LightRequest,
  options: RunOptions = {},
): Promise<LightResult> {
  const parts = await runBands(runner, request.grid, options, (grid, bandOptions) =>
    runner.run('light', { ...request, grid }, bandOptions),
  );
  const rows = parts.map((part) => part.grid.rows / request.grid.rows);
  return {
    ...parts[0],
    grid: request.grid,
    directHours: joinLayers(
      parts.map((part) => part.directHours),
      12,
    ),
    openHours: joinLayers(
      parts.map((part) => part.openHours),
      12,
    ),
    lightShare: joinLayers(
      parts.map((part) => part.lightShare),
      13,
    ),
    dailyLightIntegral: joinLayers(
      parts.map((part) => part.dailyLightIntegral),
      12,
    ),
    quadratureError: {
      mean: parts.reduce((sum, part, i) => sum + part.quadratureError.mean * rows[i], 0),
      p99: Math.max(...parts.map((part) => part.quadratureError.p99)),
    },
  };
}
