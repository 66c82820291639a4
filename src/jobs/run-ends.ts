import { sameContent } from '../numeric/same-content.ts';
import type { SceneEnd } from '../scene/ends.ts';
import type { RunOptions } from './messages.ts';

/** The answer as expected, and with one thing at a time at an end of what is not known of it. */
export interface AtEnds<Result> {
  readonly usual: Result;
  readonly ends: ReadonlyMap<SceneEnd, Result>;
  /** As expected, by the same engine in finer steps; null where the engine states its error itself. */
  readonly finer: Result | null;
}

interface Asked<Scene, Result> {
  readonly ends: readonly SceneEnd[];
  /** The scene at an end; null: as expected. */
  readonly sceneAt: (end: SceneEnd | null) => Scene;
  readonly ask: (scene: Scene, options: RunOptions) => Promise<Result>;
  /** The same in finer steps; null: the engine states its error. */
  readonly askFiner: ((scene: Scene, options: RunOptions) => Promise<Result>) | null;
  /** The answer as expected where it is there already. */
  readonly usual?: Result;
}

/**
 * Asks an engine for the expected scene and for each end, one after another. An end that leaves the scene as it is
 * (crowns where no tree stands) takes the expected answer without asking.
 */
export async function runEnds<Scene, Result>(
  { ends, sceneAt, ask, askFiner, usual: known }: Asked<Scene, Result>,
  options: RunOptions = {},
): Promise<AtEnds<Result>> {
  const runs = ends.length + (known ? 0 : 1) + (askFiner ? 1 : 0);
  let done = 0;
  const run = async (by: typeof ask, scene: Scene): Promise<Result> => {
    const result = await by(scene, {
      signal: options.signal,
      onProgress: (share) => options.onProgress?.((done + share) / runs),
    });
    done++;
    options.onProgress?.(done / runs);
    return result;
  };
  const usualScene = sceneAt(null);
  const usual = known ?? (await run(ask, usualScene));
  const found = new Map<SceneEnd, Result>();
  for (const end of ends) {
    const scene = sceneAt(end);
    if (sameContent(scene, usualScene)) {
      done++;
      found.set(end, usual);
    } else found.set(end, await run(ask, scene));
  }
  return { usual, ends: found, finer: askFiner && (await run(askFiner, usualScene)) };
}
