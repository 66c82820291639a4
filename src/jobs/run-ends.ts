import type { SceneEnd } from '../scene/ends.ts';
import type { RunOptions } from './messages.ts';
import { sameContent } from './same-content.ts';

/** The answer as expected, and with one thing at a time at an end of what is not known of it. */
export interface AtEnds<Result> {
  readonly usual: Result;
  readonly ends: ReadonlyMap<SceneEnd, Result>;
}

/**
 * Asks an engine for the expected scene and for each end, one after another. An end that leaves the scene as it is
 * (crowns where no tree stands) takes the expected answer without asking.
 * @param sceneAt the scene at an end; null: as expected.
 */
export async function runEnds<Scene, Result>(
  ends: readonly SceneEnd[],
  sceneAt: (end: SceneEnd | null) => Scene,
  ask: (scene: Scene, options: RunOptions) => Promise<Result>,
  options: RunOptions = {},
): Promise<AtEnds<Result>> {
  const runs = ends.length + 1;
  let done = 0;
  const run = async (scene: Scene): Promise<Result> => {
    const result = await ask(scene, {
      signal: options.signal,
      onProgress: (share) => options.onProgress?.((done + share) / runs),
    });
    done++;
    options.onProgress?.(done / runs);
    return result;
  };
  const usualScene = sceneAt(null);
  const usual = await run(usualScene);
  const found = new Map<SceneEnd, Result>();
  for (const end of ends) {
    const scene = sceneAt(end);
    if (sameContent(scene, usualScene)) {
      done++;
      found.set(end, usual);
    } else found.set(end, await run(scene));
  }
  return { usual, ends: found };
}
