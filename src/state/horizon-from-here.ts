import type { StoreApi } from 'zustand/vanilla';
import { type LonLat, toLocal } from '../geo/frame.ts';
import type { JobRunner } from '../jobs/messages.ts';
import { hoursByPeriod, runViewFrom } from '../jobs/run-view-from.ts';
import type { Grid } from '../numeric/grid.ts';
import { lightScene } from '../scene/build-scene.ts';
import { middleOfSeason } from '../site/season-words.ts';
import { shown } from './answer-keys.ts';
import { withSupposed } from './end-words.ts';
import type { HorizonFound } from './horizon-found.ts';
import type { KeptAnswers } from './keep-answers.ts';
import { keepWhileOpen } from './keep-while-open.ts';
import type { Pass } from './lane.ts';
import type { App, AppState } from './model.ts';
import { READING_HEIGHT_M } from './reading-height.ts';
import { sceneOptions } from './scene-options.ts';

/** The month whose leaves and sun are drawn: the chosen one, else the one in the middle of the growing season. */
const monthOf = ({ period, document, centre }: AppState): number =>
  typeof period === 'number' ? period : middleOfSeason(document.site, centre[1]);

const key = (state: AppState) => [...shown(state), state.year, state.layer, state.horizonAt, monthOf(state)];

/** The horizon from `at` as the app is set: year, height, month, and the end of what is not known that is shown. */
export const horizonPasses = (
  state: AppState,
  ground: Grid,
  at: LonLat,
  runner: JobRunner,
): Pass<HorizonFound>[] => [
  async (signal, onProgress) => {
    const { scene, things, assumed } = lightScene(state.document, sceneOptions(state, ground));
    const [xM, yM] = toLocal(state.frame, at);
    const found = await runViewFrom(
      runner,
      { scene, things, xM, yM, readingHeightM: READING_HEIGHT_M[state.layer], month: monthOf(state) },
      { signal, onProgress },
    );
    return {
      ...found,
      hours: hoursByPeriod(found),
      at,
      year: state.year,
      calendarYear: scene.calendarYear,
      layout: state.layout,
      assumed: withSupposed(assumed, state.shownEnd),
    };
  },
];

/** Keeps the horizon of the spot that is looked from current, while its dialog is open. */
export const keepHorizon = (
  store: StoreApi<App>,
  passesOf: (state: AppState, ground: Grid, at: LonLat) => readonly Pass<HorizonFound>[],
): KeptAnswers =>
  keepWhileOpen<HorizonFound>(
    store,
    { read: ({ horizon }) => horizon, write: (horizon) => ({ horizon }), keyOf: key },
    (state) => {
      const { dialog, horizonAt, ground } = state;
      const open = dialog === 'horizon' || dialog === 'print-horizon';
      return open && horizonAt && ground ? passesOf(state, ground, horizonAt) : null;
    },
  );
