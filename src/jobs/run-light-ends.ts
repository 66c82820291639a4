import type { LightRequest, LightResult } from '../light/light-types.ts';
import { SCENE_ENDS, type SceneEnd } from '../scene/ends.ts';
import type { JobRunner, RunOptions } from './messages.ts';
import { type AtEnds, runEnds } from './run-ends.ts';
import { runLight } from './run-light.ts';

/**
 * Light as expected and at each end of what is not known. The engine states its error with each answer.
 * @param sceneAt the scene at an end; null: as expected.
 * @param keep what of an answer is kept: seven whole ones of a large grid would fill the memory.
 * @param usual the same of the answer as expected where it is there already.
 */
export const runLightEnds = <Kept>(
  runner: JobRunner,
  sceneAt: (end: SceneEnd | null) => LightRequest['scene'],
  where: Pick<LightRequest, 'grid' | 'readingHeightM'>,
  keep: (result: LightResult) => Kept,
  options: RunOptions,
  usual?: Kept,
): Promise<AtEnds<Kept>> =>
  runEnds(
    {
      ends: SCENE_ENDS,
      sceneAt,
      ask: async (scene, run) => keep(await runLight(runner, { ...where, scene }, run)),
      askFiner: null,
      usual,
    },
    options,
  );
