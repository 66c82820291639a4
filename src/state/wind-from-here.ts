import type { StoreApi } from 'zustand/vanilla';
import { type LonLat, toLocal } from '../geo/frame.ts';
import type { JobRunner } from '../jobs/messages.ts';
import { runShelterAt, type WindHere } from '../jobs/run-shelter-at.ts';
import type { Grid } from '../numeric/grid.ts';
import { shelterScene } from '../scene/build-scene.ts';
import { ownersOf } from '../scene/owners.ts';
import { shown } from './answer-keys.ts';
import { withSupposed } from './end-words.ts';
import type { KeptAnswers } from './keep-answers.ts';
import { keepWhileOpen } from './keep-while-open.ts';
import type { Pass } from './lane.ts';
import type { App, AppState } from './model.ts';
import { WIND_READING_HEIGHT_M } from './reading-height.ts';
import { sceneOptions } from './scene-options.ts';
import type { WindFound } from './wind-found.ts';
import { GALE_MPS } from './work.ts';

const key = (state: AppState) => [...shown(state), state.shelterOptions, state.year, state.windAt];

/** The wind at `at` as the app is set: year, layout, and the end of what is not known that is shown. */
export const windPasses = (
  state: AppState,
  ground: Grid,
  at: LonLat,
  runner: JobRunner,
): Pass<WindFound>[] => [
  async (signal, onProgress) => {
    const { scene, things, assumed } = shelterScene(state.document, sceneOptions(state, ground));
    const [xM, yM] = toLocal(state.frame, at);
    const found: WindHere = await runShelterAt(
      runner,
      {
        scene,
        things,
        owners: ownersOf(state.document),
        xM,
        yM,
        readingHeightM: WIND_READING_HEIGHT_M,
        galeMps: GALE_MPS,
        options: state.shelterOptions,
      },
      { signal, onProgress },
    );
    return {
      ...found,
      lonLat: at,
      year: state.year,
      assumed: withSupposed(assumed, state.shownEnd),
    };
  },
];

/** Keeps the wind at the spot that was asked for current, while its dialog is open. */
export const keepWindFromHere = (
  store: StoreApi<App>,
  passesOf: (state: AppState, ground: Grid, at: LonLat) => readonly Pass<WindFound>[],
): KeptAnswers =>
  keepWhileOpen<WindFound>(
    store,
    { read: ({ windHere }) => windHere, write: (windHere) => ({ windHere }), keyOf: key },
    (state) => {
      const { dialog, windAt, ground } = state;
      return dialog === 'wind-here' && windAt && ground ? passesOf(state, ground, windAt) : null;
    },
  );
