import type { LightRequest, LightResult } from '../light/light-types.ts';
import { SCENE_ENDS, type SceneEnd } from '../scene/ends.ts';
import type { JobRunner, RunOptions } from './messages.ts';
import { type AtEnds, runEnds } from './run-ends.ts';
import { runLight } from './run-light.ts';

/**
 * Light as expected and at each end of what is not known. The engine states its error with each answer.
 * @param sceneAt the scene at an end; null: as expected.
 * @param usual the answer as expected where it is there already.
 */
export const runLightEnds = (
  runner: JobRunner,
  sceneAt: (end: SceneEnd | null) => LightRequest['scene'],
  where: Pick<LightRequest, 'grid' | 'readingHeightM'>,
  options: RunOptions,
  usual?: LightResult,
): Promise<AtEnds<LightResult>> =>
  runEnds(
    {
      ends: SCENE_ENDS,
      sceneAt,
      ask: (scene, run) => runLight(runner, { ...where, scene }, run),
      askFiner: null,
      usual,
    },
    options,
  );
