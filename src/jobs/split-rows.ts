import type { RowChoice } from '../light/shadow-tile.ts';
import type { GridSpec } from '../numeric/grid.ts';
import type { JobRunner, RunOptions } from './messages.ts';

/** Fewer rows than this are not worth a job of their own. */
const LEAST_ROWS = 8;

/** The grid cut into bands of whole rows, north to south, one for each thread. */
export function rowBands(grid: GridSpec, threads: number): GridSpec[] {
  const count = Math.max(1, Math.min(threads, Math.floor(grid.rows / LEAST_ROWS)));
  return Array.from({ length: count }, (_, i) => {
    const first = Math.round((grid.rows * i) / count);
    const end = Math.round((grid.rows * (i + 1)) / count);
    return { ...grid, rows: end - first, northM: grid.northM - first * grid.cellM };
  });
}

/** Runs one job a band of rows and joins their progress. */
export const runBands = <Result>(
  runner: JobRunner,
  grid: GridSpec,
  options: RunOptions,
  runBand: (band: GridSpec, options: RunOptions) => Promise<Result>,
): Promise<Result[]> => runParts(rowBands(grid, runner.threads), (band) => band.rows, options, runBand);

/** Rows in turn, every thread its own: what one part of a field costs another costs too. */
export function rowsInTurn(grid: GridSpec, threads: number): RowChoice[] {
  const step = Math.max(1, Math.min(threads, Math.floor(grid.rows / LEAST_ROWS)));
  return Array.from({ length: step }, (_, first) => ({ first, step }));
}

/**
 * Runs one job a part, and joins their progress by the parts' weights.
 * @throws what the first part that fails throws; the others are stopped
 */
export async function runParts<Part, Result>(
  parts: readonly Part[],
  weightOf: (part: Part) => number,
  options: RunOptions,
  runPart: (part: Part, options: RunOptions, index: number) => Promise<Result>,
): Promise<Result[]> {
  const done = parts.map(() => 0);
  const total = parts.reduce((sum, part) => sum + weightOf(part), 0);
  // When one part fails the others are of no use: stop them.
  const stop = new AbortController();
  const forward = () => stop.abort();
  options.signal?.addEventListener('abort', forward, { once: true });
  if (options.signal?.aborted) stop.abort();
  try {
    return await Promise.all(
      parts.map((part, i) =>
        runPart(
          part,
          {
            signal: stop.signal,
            onProgress: (share) => {
              done[i] = share;
              options.onProgress?.(parts.reduce((sum, p, k) => sum + done[k] * weightOf(p), 0) / total);
            },
          },
          i,
        ),
      ),
    );
  } catch (error) {
    stop.abort();
    throw error;
  } finally {
    options.signal?.removeEventListener('abort', forward);
  }
}

/** Joins the band-major layers of results that cover consecutive bands of rows. */
export function joinLayers(parts: readonly Float32Array[], layers: number): Float32Array {
  const cells = parts.reduce((sum, part) => sum + part.length / layers, 0);
  const joined = new Float32Array(cells * layers);
  for (let layer = 0; layer < layers; layer++) {
    let at = layer * cells;
    for (const part of parts) {
      const size = part.length / layers;
      joined.set(part.subarray(layer * size, (layer + 1) * size), at);
      at += size;
    }
  }
  return joined;
}

/** Joins the band-major layers of results that hold a grid's rows in turn. */
export function joinRowsInTurn(parts: readonly Float32Array[], layers: number, grid: GridSpec): Float32Array {
  const { columns, rows } = grid;
  if (parts.length === 1) return parts[0];
  const joined = new Float32Array(layers * rows * columns);
  for (const [first, part] of parts.entries()) {
    const own = part.length / layers / columns;
    for (let layer = 0; layer < layers; layer++)
      for (let r = 0; r < own; r++) {
        const from = (layer * own + r) * columns;
        const to = (layer * rows + first + r * parts.length) * columns;
        joined.set(part.subarray(from, from + columns), to);
      }
  }
  return joined;
}
