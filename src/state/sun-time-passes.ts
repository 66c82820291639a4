import type { JobRunner } from '../jobs/messages.ts';
import { type AtEnds, runEnds } from '../jobs/run-ends.ts';
import { runFirstLastSun } from '../jobs/run-first-last-sun.ts';
import type { FirstLastSun } from '../light/first-last-sun-types.ts';
import type { Grid } from '../numeric/grid.ts';
import { lightScene } from '../scene/build-scene.ts';
import { SCENE_ENDS } from '../scene/ends.ts';
import { siteGrid } from '../scene/site-grid.ts';
import { coarseGrid, optionsAt } from './end-passes.ts';
import type { Pass } from './lane.ts';
import { lightField } from './light-field.ts';
import type { AppState } from './model.ts';
import { READING_HEIGHT_M } from './reading-height.ts';
import { sceneOptions } from './scene-options.ts';

/** @param cellsM coarse first. */
export const sunTimePasses = (
  state: AppState,
  ground: Grid,
  runner: JobRunner,
  cellsM: readonly number[],
): Pass<FirstLastSun>[] =>
  cellsM.map((cellM) => (signal, onProgress) => {
    const { scene } = lightScene(state.document, sceneOptions(state, ground));
    const field = lightField(state);
    const grid = siteGrid(state.document, state.frame, { cellM, layout: state.layout, field });
    const readingHeightM = READING_HEIGHT_M[state.layer];
    return runFirstLastSun(runner, { scene, grid, readingHeightM }, { signal, onProgress });
  });

export const sunTimeEndPasses = (
  state: AppState,
  ground: Grid,
  runner: JobRunner,
): Pass<AtEnds<FirstLastSun>>[] => [
  (signal, onProgress) => {
    const at = optionsAt(state, ground);
    const where = {
      grid: coarseGrid(state, lightField(state)),
      readingHeightM: READING_HEIGHT_M[state.layer],
    };
    return runEnds(
      {
        ends: SCENE_ENDS,
        sceneAt: (end) => lightScene(state.document, at(end)).scene,
        ask: (scene, options) => runFirstLastSun(runner, { ...where, scene }, options),
        askFiner: null,
      },
      { signal, onProgress },
    );
  },
];
