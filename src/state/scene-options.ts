import type { Grid } from '../numeric/grid.ts';
import { atEnd } from '../scene/ends.ts';
import type { SceneOptions } from '../scene/options.ts';
import type { AppState } from './model.ts';
import { surfaceInUse } from './surface-words.ts';

/** What of a state a scene is built with, besides its document and ground. */
export type SceneState = Pick<
  AppState,
  'year' | 'layout' | 'felled' | 'stepped' | 'frame' | 'weather' | 'terrain' | 'surface' | 'shownEnd'
>;

/** What a scene is built with for a state, at the end that is shown, or for another year of it. */
export const sceneOptions = (state: SceneState, ground: Grid, year = state.year): SceneOptions =>
  atEnd(
    {
      year,
      layout: state.layout,
      felled: state.felled,
      speeds: state.stepped.result,
      pace: 'usual',
      frame: state.frame,
      ground,
      weather: state.weather,
      surface: surfaceInUse(state),
    },
    state.shownEnd,
  );
