import type { JobRunner } from '../jobs/messages.ts';
import type { AtEnds } from '../jobs/run-ends.ts';
import { runLightEnds } from '../jobs/run-light-ends.ts';
import { runShelterEnds } from '../jobs/run-shelter-ends.ts';
import type { LightResult } from '../light/light-types.ts';
import type { Grid, GridSpec } from '../numeric/grid.ts';
import { lightScene, shelterScene } from '../scene/build-scene.ts';
import { atEnd, type SceneEnd } from '../scene/ends.ts';
import { siteGrid } from '../scene/site-grid.ts';
import type { ShelterRequest, ShelterResult } from '../wind/shelter-types.ts';
import { passCellsM } from './cell-size.ts';
import type { Pass } from './lane.ts';
import { lightField } from './light-field.ts';
import type { AppState } from './model.ts';
import { READING_HEIGHT_M } from './reading-height.ts';
import { sceneOptions } from './scene-options.ts';

/** Differences of means settle on the cells of the first, coarse map. */
export function coarseGrid(state: AppState, field: string | undefined): GridSpec {
  const on = (cellM: number) => siteGrid(state.document, state.frame, { cellM, layout: state.layout, field });
  return on(passCellsM(on(5), null)[0]);
}

/** What a scene at an end is built with: the ends depart from the expected, whichever end the map shows. */
export const optionsAt = (state: AppState, ground: Grid) => {
  const expected = sceneOptions({ ...state, shownEnd: null }, ground);
  return (end: SceneEnd | null) => atEnd(expected, end);
};

/** The month and the quantity are chosen later: the whole of an answer is kept. */
const asItIs = <Result>(result: Result): Result => result;

export const lightEndPasses = (
  state: AppState,
  ground: Grid,
  runner: JobRunner,
): Pass<AtEnds<LightResult>>[] => [
  (signal, onProgress) => {
    const where = {
      grid: coarseGrid(state, lightField(state)),
      readingHeightM: READING_HEIGHT_M[state.layer],
    };
    const at = optionsAt(state, ground);
    return runLightEnds(runner, (end) => lightScene(state.document, at(end)).scene, where, asItIs, {
      signal,
      onProgress,
    });
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
    return runShelterEnds(
      runner,
      (end) => shelterScene(state.document, at(end)).scene,
      { ...asked, grid: coarseGrid(state, undefined) },
      asItIs,
      { signal, onProgress },
    );
  },
];
