import type { JobRunner } from '../jobs/messages.ts';
import { type AtEnds, runEnds } from '../jobs/run-ends.ts';
import { runLight } from '../jobs/run-light.ts';
import { runShelter } from '../jobs/run-shelter.ts';
import type { LightResult } from '../light/light-types.ts';
import type { Grid, GridSpec } from '../numeric/grid.ts';
import { lightScene, shelterScene } from '../scene/build-scene.ts';
import { atEnd, ENDS_OF_CAUSE, SCENE_ENDS, type SceneEnd, WIND_CAUSES } from '../scene/ends.ts';
import { siteGrid } from '../scene/site-grid.ts';
import type { ShelterRequest, ShelterResult } from '../wind/shelter-types.ts';
import { passCellsM } from './cell-size.ts';
import type { Pass } from './lane.ts';
import { lightField } from './light-field.ts';
import type { AppState } from './model.ts';
import { READING_HEIGHT_M } from './reading-height.ts';
import { sceneOptions } from './scene-options.ts';

/** Differences of means settle on the cells of the first, coarse map. */
function coarseGrid(state: AppState, field: string | undefined): GridSpec {
  const on = (cellM: number) => siteGrid(state.document, state.frame, { cellM, layout: state.layout, field });
  return on(passCellsM(on(5), null)[0]);
}

/** What a scene at an end is built with: the ends depart from the expected, whichever end the map shows. */
const optionsAt = (state: AppState, ground: Grid) => {
  const expected = sceneOptions({ ...state, shownEnd: null }, ground);
  return (end: SceneEnd | null) => atEnd(expected, end);
};

export const lightEndPasses = (
  state: AppState,
  ground: Grid,
  runner: JobRunner,
): Pass<AtEnds<LightResult>>[] => [
  (signal, onProgress) => {
    const at = optionsAt(state, ground);
    const grid = coarseGrid(state, lightField(state));
    const readingHeightM = READING_HEIGHT_M[state.layer];
    return runEnds(
      SCENE_ENDS,
      (end) => lightScene(state.document, at(end)).scene,
      (scene, options) => runLight(runner, { scene, grid, readingHeightM }, options),
      { signal, onProgress },
    );
  },
];

export const shelterEndPasses = (
  state: AppState,
  ground: Grid,
  runner: JobRunner,
  asked: Omit<ShelterRequest, 'scene' | 'grid'>,
): Pass<AtEnds<ShelterResult>>[] => [
  (signal, onProgress) => {
    const at = optionsAt(state, ground);
    const grid = coarseGrid(state, undefined);
    return runEnds(
      WIND_CAUSES.flatMap((cause) => ENDS_OF_CAUSE[cause]),
      (end) => shelterScene(state.document, at(end)).scene,
      (scene, options) => runShelter(runner, { ...asked, scene, grid }, options),
      { signal, onProgress },
    );
  },
];
