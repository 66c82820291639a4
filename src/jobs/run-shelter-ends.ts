import { SCENE_ENDS, type SceneEnd } from '../scene/ends.ts';
import { USUAL_FINENESS } from '../wind/fineness.ts';
import type { ShelterRequest, ShelterResult } from '../wind/shelter-types.ts';
import type { JobRunner, RunOptions } from './messages.ts';
import { type AtEnds, runEnds } from './run-ends.ts';
import { runShelter } from './run-shelter.ts';

/** Against so many times the directions the engine's own error shows. */
const FINER = 3;

/**
 * Shelter as expected, at each end of what is not known, and from finer directions.
 * @param sceneAt the scene at an end; null: as expected.
 * @param keep what of an answer is kept: seven whole ones of a large grid would fill the memory.
 * @param usual the same of the answer as expected where it is there already.
 */
export const runShelterEnds = <Kept>(
  runner: JobRunner,
  sceneAt: (end: SceneEnd | null) => ShelterRequest['scene'],
  asked: Omit<ShelterRequest, 'scene'>,
  keep: (result: ShelterResult) => Kept,
  options: RunOptions,
  usual?: Kept,
): Promise<AtEnds<Kept>> =>
  runEnds(
    {
      ends: SCENE_ENDS,
      sceneAt,
      ask: async (scene, run) => keep(await runShelter(runner, { ...asked, scene }, run)),
      askFiner: async (scene, run) => {
        const finer = {
          ...asked,
          scene,
          fineness: { ...USUAL_FINENESS, directionsASector: FINER * USUAL_FINENESS.directionsASector },
        };
        return keep(await runShelter(runner, finer, run));
      },
      usual,
    },
    options,
  );
