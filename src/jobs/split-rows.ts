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
export async function runBands<Result>(
  runner: JobRunner,
  grid: GridSpec,
  options: RunOptions,
  runBand: (band: GridSpec, options: RunOptions) => Promise<Result>,
): Promise<Result[]> {
  const bands = rowBands(grid, runner.threads);
  const done = bands.map(() => 0);
  // When one band fails the others are of no use: stop them.
  const stop = new AbortController();
  const forward = () => stop.abort();
  options.signal?.addEventListener('abort', forward, { once: true });
  if (options.signal?.aborted) stop.abort();
  try {
    return await Promise.all(
      bands.map((band, i) =>
        runBand(band, {
          signal: stop.signal,
          onProgress: (share) => {
            done[i] = share;
            options.onProgress?.(bands.reduce((sum, b, k) => sum + done[k] * b.rows, 0) / grid.rows);
          },
        }),
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
