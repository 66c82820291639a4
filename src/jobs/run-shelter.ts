import type { GridSpec } from '../numeric/grid.ts';
import { QUICK_FINENESS } from '../wind/fineness.ts';
import type { HeldShelterRequest, ShelterRequest, ShelterResult } from '../wind/shelter-types.ts';
import { withGroundNear } from './ground-near.ts';
import type { JobRunner, RunOptions } from './messages.ts';
import { joinLayers, rowBands, runBands, runParts } from './split-rows.ts';

/** Shelter over a whole grid, its rows shared out among the runner's threads. */
export async function runShelter(
  runner: JobRunner,
  request: ShelterRequest,
  options: RunOptions = {},
): Promise<ShelterResult> {
  const scene = withGroundNear(request.scene, [request.grid]);
  const parts = await runBands(runner, request.grid, options, (grid, bandOptions) =>
    runner.run('shelter', { ...request, scene, grid }, bandOptions),
  );
  return joined(request.grid, parts);
}

/** A field that is followed keeps up to half a kilobyte a cell. */
export const MOST_FOLLOWED_CELLS = 100_000;

/** Shelter while some things are in hand: from fewer directions, and each thread keeps what stands still on its rows. */
export async function followShelter(
  runner: JobRunner,
  request: HeldShelterRequest,
  options: RunOptions = {},
): Promise<ShelterResult> {
  const scene = withGroundNear(request.scene, [request.grid]);
  const parts = await runParts(
    rowBands(request.grid, runner.threads),
    ({ rows }) => rows,
    options,
    (grid, run, seat) =>
      runner.run('shelter-follow', { ...request, scene, grid, fineness: QUICK_FINENESS }, { ...run, seat }),
  );
  return joined(request.grid, parts);
}

const joined = (grid: GridSpec, parts: readonly ShelterResult[]): ShelterResult => ({
  ...parts[0],
  grid,
  windShare: joinLayers(
    parts.map((part) => part.windShare),
    3,
  ),
  galeHours: joinLayers(
    parts.map((part) => part.galeHours),
    3,
  ),
});
