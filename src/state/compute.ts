import type { StoreApi } from 'zustand/vanilla';
import type { AtEnds } from '../jobs/run-ends.ts';
import type { FirstLastSun } from '../light/first-last-sun-types.ts';
import type { LightResult } from '../light/light-types.ts';
import type { ShelterResult } from '../wind/shelter-types.ts';
import type { YearsLook } from '../years/years-look-types.ts';
import {
  type Key,
  lightEndsKey,
  lightKey,
  patchesKey,
  sameKey,
  shelterEndsKey,
  shelterKey,
  yearsKey,
} from './answer-keys.ts';
import { followedYear } from './followed-year.ts';
import { type KeptAnswers, keepAnswers, laneOf } from './keep-answers.ts';
import type { Pass } from './lane.ts';
import type { App, AppState, Computation, PatchOutlook, ThingCost } from './model.ts';
import { awaitsGrowth } from './step-growth.ts';
import { isSunTime } from './sun-times.ts';

/** How the answers are computed for a state; in the app by workers, in tests by hand. */
export interface Work {
  /** Coarse first, then the chosen cell. */
  light(state: AppState): readonly Pass<LightResult>[];
  /** Whether the light at hand follows the state's features at once; `show` is then given what it finds on the way. */
  followLight(state: AppState, show: (result: LightResult) => void): boolean;
  shelter(state: AppState): readonly Pass<ShelterResult>[];
  followShelter(state: AppState, show: (result: ShelterResult) => void): boolean;
  outlook(state: AppState): readonly Pass<readonly PatchOutlook[]>[];
  costs(state: AppState): readonly Pass<readonly ThingCost[]>[];
  /** In full: all years cell by cell, with their band; otherwise some on coarse cells. Null: there is no field to follow. */
  yearsLook(state: AppState, full: boolean): readonly Pass<YearsLook>[] | null;
  lightEnds(state: AppState): readonly Pass<AtEnds<LightResult>>[];
  shelterEnds(state: AppState): readonly Pass<AtEnds<ShelterResult>>[];
  sunTimes(state: AppState): readonly Pass<FirstLastSun>[];
  sunTimeEnds(state: AppState): readonly Pass<AtEnds<FirstLastSun>>[];
}

const LIGHT_PICTURES = new Set(['light-share', 'sun-hours', 'daily-light']);
/** A hand that moves a slider or drags a tree rests this long before anything starts. */
const REST_MS = 120;

/** Ready, failed or stopped: what comes after it may begin. */
const isSettled = ({ status }: Computation<unknown>): boolean => status !== 'idle' && status !== 'computing';

const isCurrent = ({ status, stale }: Computation<unknown>): boolean => status === 'ready' && !stale;

/** Where the map already shows the year as the years in one look hold it, it is not to fall back to coarse cells. */
function finestIfFollowed<Result>(
  state: AppState,
  map: 'lightShare' | 'sunHours' | 'windCut',
  passes: readonly Pass<Result>[],
): readonly Pass<Result>[] {
  return followedYear(state)?.[map] ? passes.slice(-1) : passes;
}

const needsLight = (state: AppState): boolean => state.step === 'light' || LIGHT_PICTURES.has(state.picture);

/**
 * Keeps the answers current: watches the store and asks for what the chosen step and picture need. Light waits for
 * its picture or step; shelter is quick and always kept current. The patches' outlook, the costs and the years wait
 * until the light of the chosen year is there, so that the map comes first; so does what would change it most. While
 * the years are played everything but they rests.
 */
export function keepComputing(store: StoreApi<App>, work: Work): KeptAnswers {
  const light = laneOf(store, 'light');
  const shelter = laneOf(store, 'shelter');
  const outlook = laneOf(store, 'outlook');
  const costs = laneOf(store, 'costs');
  const yearsLook = laneOf(store, 'yearsLook');
  const lightEnds = laneOf(store, 'lightEnds');
  const shelterEnds = laneOf(store, 'shelterEnds');
  const sunTimes = laneOf(store, 'sunTimes');
  const sunTimeEnds = laneOf(store, 'sunTimeEnds');
  // A stop goes through them in this order, so that none begins because the one before it has ended.
  const lanes = [light, sunTimes, shelter, outlook, costs, lightEnds, sunTimeEnds, shelterEnds, yearsLook];

  /** What would change the map that is looked at most: asked when the map and its step's first answers are there. */
  const lookAtEnds = (state: AppState) => {
    const now = store.getState();
    const answered = state.step !== 'light' || isSettled(now.costs);
    if (LIGHT_PICTURES.has(state.picture) && isCurrent(now.light) && answered)
      lightEnds.want(lightEndsKey(state), work.lightEnds(state), REST_MS);
    else lightEnds.rest(lightEndsKey(state));
    if (isSunTime(state.picture) && isCurrent(now.sunTimes) && answered)
      sunTimeEnds.want(lightEndsKey(state), work.sunTimeEnds(state), REST_MS);
    else sunTimeEnds.rest(lightEndsKey(state));
    if (state.picture === 'wind-cut' && isCurrent(now.shelter))
      shelterEnds.want(shelterEndsKey(state), work.shelterEnds(state), REST_MS);
    else shelterEnds.rest(shelterEndsKey(state));
  };
  const endsSettled = (): boolean => {
    const { picture, lightEnds: ofLight, sunTimeEnds: ofSun } = store.getState();
    return isSunTime(picture) ? isSettled(ofSun) : !LIGHT_PICTURES.has(picture) || isSettled(ofLight);
  };

  /** Of which site the years have been asked for in full: they stay so as long as nothing of it changes. */
  let fullFor: Key | null = null;
  const lookAtYears = (state: AppState, firstCurve: boolean) => {
    const key = yearsKey(state);
    if (state.yearsOpen || state.playing) fullFor = key;
    const full = sameKey(fullFor, key);
    // While growth is stepped anew every year is about to change.
    if (state.stepped.status === 'computing') return yearsLook.rest([null]);
    const wanted = state.yearsOpen || state.playing || firstCurve;
    const passes = wanted ? work.yearsLook(state, full) : null;
    if (passes) yearsLook.want([...key, full], passes, REST_MS);
    else yearsLook.rest([...key, full]);
  };

  const restForPlay = (state: AppState) => {
    for (const each of [light, sunTimes]) each.rest(lightKey(state));
    shelter.rest(shelterKey(state));
    for (const each of [outlook, costs]) each.rest(patchesKey(state));
    for (const each of [lightEnds, sunTimeEnds]) each.rest(lightEndsKey(state));
    shelterEnds.rest(shelterEndsKey(state));
  };

  return keepAnswers(store, lanes, (state) => {
    // What two layouts are looked at beside each other needs, comes first: the map lies under it.
    const covered = state.dialog === 'two-layouts';
    const empty = state.ground === null || state.document.features.length === 0;
    if (empty || covered || awaitsGrowth(state)) {
      for (const each of lanes) each.rest([null]);
      return;
    }
    // First of all: what an edit makes old must not be shown for the maps that it makes old as well.
    lookAtYears(state, false);
    if (state.playing) return restForPlay(state);
    const sheltering = work.followShelter(state, shelter.show);
    shelter.want(
      shelterKey(state),
      finestIfFollowed(state, 'windCut', work.shelter(state)),
      REST_MS,
      sheltering,
    );
    // The map that is looked at comes first.
    if (isSunTime(state.picture)) sunTimes.want(lightKey(state), work.sunTimes(state), REST_MS);
    else sunTimes.rest(lightKey(state));
    if (needsLight(state)) {
      const follows = work.followLight(state, light.show);
      light.want(
        lightKey(state),
        finestIfFollowed(state, state.picture === 'sun-hours' ? 'sunHours' : 'lightShare', work.light(state)),
        REST_MS,
        follows,
      );
    } else light.rest(lightKey(state));
    const after = store.getState();
    // The coarse map is enough to go on: the patches have cells of their own.
    const lightIsThere = after.light.result !== null && !after.light.stale;
    const inLight = state.step === 'light' && lightIsThere;
    if (inLight || state.yearsOpen) outlook.want(patchesKey(state), work.outlook(state), REST_MS);
    else outlook.rest(patchesKey(state));
    if (!inLight) costs.rest(patchesKey(state));
    else if (isSettled(store.getState().outlook)) costs.want(patchesKey(state), work.costs(state), REST_MS);
    lookAtEnds(state);
    if (inLight && isSettled(store.getState().costs) && endsSettled()) lookAtYears(state, true);
  });
}
