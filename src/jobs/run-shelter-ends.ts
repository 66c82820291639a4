import { type SceneEnd, WIND_ENDS } from '../scene/ends.ts';
import { DIRECTIONS_A_SECTOR } from '../wind/shelter-directions.ts';
import type { ShelterRequest, ShelterResult } from '../wind/shelter-types.ts';
import type { JobRunner, RunOptions } from './messages.ts';
import { type AtEnds, runEnds } from './run-ends.ts';
import { runShelter } from './run-shelter.ts';

/** Against so many times the directions the engine's own error shows. */
const FINER = 3;

/**
 * Shelter as expected, at each end of what is not known and reaches the wind, and from finer directions.
 * @param sceneAt the scene at an end; null: as expected.
 * @param usual the answer as expected where it is there already.
 */
export const runShelterEnds = (
  runner: JobRunner,
  sceneAt: (end: SceneEnd | null) => ShelterRequest['scene'],
  asked: Omit<ShelterRequest, 'scene'>,
  options: RunOptions,
  usual?: ShelterResult,
): Promise<AtEnds<ShelterResult>> =>
  runEnds(
    {
      ends: WIND_ENDS,
      sceneAt,
      ask: (scene, run) => runShelter(runner, { ...asked, scene }, run),
      askFiner: (scene, run) =>
        runShelter(runner, { ...asked, scene, directionsASector: FINER * DIRECTIONS_A_SECTOR }, run),
      usual,
    },
    options,
  );
