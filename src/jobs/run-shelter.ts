import type { ShelterRequest, ShelterResult } from '../wind/shelter-types.ts';
import type { JobRunner, RunOptions } from './messages.ts';
import { joinLayers, runBands } from './split-rows.ts';

/** Shelter over a whole grid, its rows shared out among the runner's threads. */
export async function runShelter(
  runner: JobRunner,
  request: ShelterRequest,
  options: RunOptions = {},
): Promise<ShelterResult> {
  const parts = await runBands(runner, request.grid, options, (grid, bandOptions) =>
    runner.run('shelter', { ...request, grid }, bandOptions),
  );
  return {
    ...parts[0],
    grid: request.grid,
    windShare: joinLayers(
      parts.map((part) => part.windShare),
      3,
    ),
    galeHours: joinLayers(
      parts.map((part) => part.galeHours),
      3,
    ),
  };
}
