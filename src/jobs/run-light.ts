import type { LightRequest, LightResult } from '../light/light-types.ts';
import { chosenRows } from '../light/shadow-tile.ts';
import type { GridSpec } from '../numeric/grid.ts';
import type { JobRunner, LightChange, RunOptions } from './messages.ts';
import { joinRowsInTurn, rowsInTurn, runParts } from './split-rows.ts';

/** Light over a whole grid, its rows shared out among the runner's threads. */
export async function runLight(
  runner: JobRunner,
  request: LightRequest,
  options: RunOptions = {},
): Promise<LightResult> {
  const { grid } = request;
  const shares = rowsInTurn(grid, runner.threads);
  const parts = await runParts(
    shares,
    (rows) => chosenRows(grid, rows),
    options,
    (rows, run) => runner.run('light', { ...request, rows }, run),
  );
  return joined(grid, parts);
}

/** A field of light kept in the workers: thread k holds every threads-th row from row k on. */
export interface KeptLight {
  readonly fieldId: number;
  readonly grid: GridSpec;
  readonly threads: number;
}

/**
 * More cells than this are not kept: a kept field takes up to half a kilobyte a cell, and twice that once it is
 * changed.
 */
export const MOST_KEPT_CELLS = 200_000;

let lastFieldId = 0;

/** As `runLight`; and the workers keep the field, in place of any they kept before. */
export async function keepLight(
  runner: JobRunner,
  request: LightRequest,
  options: RunOptions = {},
): Promise<{ kept: KeptLight; result: LightResult }> {
  const { grid } = request;
  const fieldId = ++lastFieldId;
  const shares = rowsInTurn(grid, runner.threads);
  const parts = await runParts(
    shares,
    (rows) => chosenRows(grid, rows),
    options,
    (rows, run, seat) => runner.run('light-keep', { ...request, rows, fieldId }, { ...run, seat }),
  );
  return { kept: { fieldId, grid, threads: shares.length }, result: joined(grid, parts) };
}

/** The light of a kept field with other things in it; null where the workers keep it no longer, or it cannot follow. */
export async function changeLight(
  runner: JobRunner,
  { fieldId, grid, threads }: KeptLight,
  change: Omit<LightChange, 'fieldId'>,
  options: RunOptions = {},
): Promise<LightResult | null> {
  const parts = await runParts(
    Array.from({ length: threads }, (_, seat) => seat),
    () => 1,
    options,
    (seat, run) => runner.run('light-change', { fieldId, ...change }, { ...run, seat }),
  );
  const whole = parts.filter((part) => part !== null);
  return whole.length < threads ? null : joined(grid, whole);
}

/** Readies a kept field for changes of one thing (its number in the scene). */
export async function holdInLight(
  runner: JobRunner,
  { fieldId, threads }: KeptLight,
  thing: number,
): Promise<void> {
  const seats = Array.from({ length: threads }, (_, seat) => seat);
  await Promise.all(seats.map((seat) => runner.run('light-hold', { fieldId, thing }, { seat })));
}

function joined(grid: GridSpec, parts: readonly LightResult[]): LightResult {
  const join = (band: 'directHours' | 'openHours' | 'lightShare' | 'dailyLightIntegral', layers: number) =>
    joinRowsInTurn(
      parts.map((part) => part[band]),
      layers,
      grid,
    );
  return {
    ...parts[0],
    directHours: join('directHours', 12),
    openHours: join('openHours', 12),
    lightShare: join('lightShare', 13),
    dailyLightIntegral: join('dailyLightIntegral', 12),
  };
}
