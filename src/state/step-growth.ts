import type { StoreApi } from 'zustand/vanilla';
import type { JobRunner } from '../jobs/messages.ts';
import { runStepYears } from '../jobs/run-step-years.ts';
import type { GrowthSpeeds } from '../scene/options.ts';
import { siteDefaults } from '../site/records/site.ts';
import { steppedKey } from './answer-keys.ts';
import { type KeptAnswers, keepAnswers, laneOf } from './keep-answers.ts';
import type { App, AppState } from './model.ts';
import { sceneOptions } from './scene-options.ts';

/** A hand that moves rests this long before the years are stepped: it takes seconds, and the maps come first. */
const REST_MS = 400;
/** Seasons that differ by less than this are the same: no map would show it, and none is drawn anew for it. */
const SAME_SPEED = 0.002;

/** Growth in full shelter against the open, as the site reckons with it; 1: shelter does not speed growth. */
const usualEffect = ({ document }: AppState): number =>
  document.site.shelterEffect?.usual ?? siteDefaults.shelterEffect.usual;

/** Keeps growth and shelter stepped together, where shelter is reckoned to speed growth. */
export function keepGrowthStepped(store: StoreApi<App>, runner: JobRunner): KeptAnswers {
  const lane = laneOf(store, 'stepped');
  return keepAnswers(store, [lane], (state) => {
    const { ground } = state;
    const fullEffect = usualEffect(state);
    if (fullEffect === 1) {
      if (state.stepped.status !== 'idle') lane.clear();
      return;
    }
    if (!ground) return;
    lane.want(
      steppedKey(state),
      [
        async (signal, onProgress) => {
          const speeds = await runStepYears(
            runner,
            {
              document: state.document,
              options: sceneOptions({ ...state, shownEnd: null }, ground),
              shelter: state.shelterOptions,
              fullEffect,
            },
            { signal, onProgress },
          );
          const last = store.getState().stepped.result;
          return last && nearlySame(last, speeds) ? last : speeds;
        },
      ],
      REST_MS,
    );
  });
}

/** Whether nothing can be drawn of the site yet because its growth has never been stepped. */
export const awaitsGrowth = (state: AppState): boolean =>
  usualEffect(state) !== 1 &&
  state.stepped.result === null &&
  (state.stepped.status === 'idle' || state.stepped.status === 'computing');

function nearlySame(a: GrowthSpeeds, b: GrowthSpeeds): boolean {
  if (a.size !== b.size) return false;
  for (const [id, speeds] of a) {
    const others = b.get(id);
    if (!others || speeds.some((speed, season) => Math.abs(speed - others[season]) > SAME_SPEED))
      return false;
  }
  return true;
}
