import type { StoreApi } from 'zustand/vanilla';
import type { JobRunner } from '../jobs/messages.ts';
import { runShelter } from '../jobs/run-shelter.ts';
import type { Grid, GridSpec } from '../numeric/grid.ts';
import { shelterScene } from '../scene/build-scene.ts';
import { siteGrid } from '../scene/site-grid.ts';
import { passCellsM } from './cell-size.ts';
import type { Work } from './compute.ts';
import { lightEndPasses, shelterEndPasses } from './end-passes.ts';
import { lightField } from './light-field.ts';
import { createLiveLight } from './live-light.ts';
import { createLiveShelter } from './live-shelter.ts';
import type { App, AppState } from './model.ts';
import { costPasses } from './patch-costs.ts';
import { createPatchOutlook } from './patch-outlook.ts';
import { WIND_READING_HEIGHT_M } from './reading-height.ts';
import { sceneOptions } from './scene-options.ts';
import { sunTimeEndPasses, sunTimePasses } from './sun-time-passes.ts';
import { createYearsPasses, followedField } from './years-look.ts';

/** Beaufort 6 and more, m/s at 10 m in the open (published lower limit). */
export const GALE_MPS = 10.8;
/** How the wind is read for the app as it is set. */
const windReading = ({ shelterOptions }: AppState) => ({
  readingHeightM: WIND_READING_HEIGHT_M,
  galeMps: GALE_MPS,
  options: shelterOptions,
});

/** The answers as the app computes them: scenes built here, engines run by the runner's workers. */
export function workersWork(store: StoreApi<App>, runner: JobRunner): Work {
  const patches = createPatchOutlook(runner);
  const yearsOf = createYearsPasses(runner, windReading);
  const groundOf = (state: AppState): Grid => {
    if (!state.ground) throw new Error('the ground is not there yet');
    return state.ground;
  };
  const live = createLiveLight(store, runner, groundOf);
  const cells = (state: AppState, field: string | undefined) =>
    passCellsM(
      siteGrid(state.document, state.frame, { cellM: 5, layout: state.layout, field }),
      state.cellWantedM,
    );
  const shelterRequest = (state: AppState, grid: GridSpec) => {
    const { scene } = shelterScene(state.document, sceneOptions(state, groundOf(state)));
    return { ...windReading(state), scene, grid };
  };
  const liveShelter = createLiveShelter(runner, shelterRequest);
  return {
    light: live.passes,
    followLight: live.follow,
    shelter: (state) => {
      const sizes = cells(state, undefined);
      const finestM = sizes[sizes.length - 1];
      // What has followed the hand is not to fall back to coarse cells when the hand rests.
      return (liveShelter.follows(state) ? [finestM] : sizes).map((cellM) => async (signal, onProgress) => {
        const grid = siteGrid(state.document, state.frame, { cellM, layout: state.layout });
        const request = shelterRequest(state, grid);
        store.setState({ windClimate: request.scene.climate });
        const result = await runShelter(runner, request, { signal, onProgress });
        if (cellM === finestM) liveShelter.begin(state, request);
        return result;
      });
    },
    followShelter: liveShelter.follow,
    outlook: (state) => patches.passes(state, groundOf(state)),
    costs: (state) => costPasses(state, groundOf(state), runner),
    lightEnds: (state) => lightEndPasses(state, groundOf(state), runner),
    shelterEnds: (state) => shelterEndPasses(state, groundOf(state), runner, windReading(state)),
    sunTimes: (state) => sunTimePasses(state, groundOf(state), runner, cells(state, lightField(state))),
    sunTimeEnds: (state) => sunTimeEndPasses(state, groundOf(state), runner),
    yearsLook: (state, full) => {
      const field = followedField(state.document);
      return field && yearsOf(state, groundOf(state), field, full);
    },
  };
}
