import type { StoreApi } from 'zustand/vanilla';
import { fieldJudgedBy } from '../belts/belt-facts.ts';
import { type BeltLike, isBeltLike, isPlanned } from '../belts/belt-shape.ts';
import type { JobRunner } from '../jobs/messages.ts';
import { runBeltsWhen } from '../jobs/run-belt-when.ts';
import { runBridges } from '../jobs/run-bridges.ts';
import { runDarkened } from '../jobs/run-darkened.ts';
import { runInsurance } from '../jobs/run-insurance.ts';
import type { Grid } from '../numeric/grid.ts';
import { lightScene } from '../scene/build-scene.ts';
import { chosenFeatures } from '../site/chosen-features.ts';
import type { FieldFeature } from '../site/records/field.ts';
import { asItStands } from './answer-keys.ts';
import { type KeptAnswers, keepAnswers, laneOf } from './keep-answers.ts';
import type { App, AppState } from './model.ts';
import { patchesOf } from './patch-outlook.ts';
import { WIND_READING_HEIGHT_M } from './reading-height.ts';
import { sceneOptions } from './scene-options.ts';
import { GALE_MPS } from './work.ts';

/** The mean over a patch settles with far fewer cells than its map needs. */
const MOST_PATCH_CELLS = 120;
/** A hand that moves rests this long before anything starts. */
const REST_MS = 200;

/** Keeps what is asked about belts answered while somebody looks; the map's own answers come first. */
export function keepBeltsAnswered(store: StoreApi<App>, runner: JobRunner): KeptAnswers {
  const sun = laneOf(store, 'beltSun');
  const years = laneOf(store, 'beltYears');
  const bridges = laneOf(store, 'bridges');
  const insurance = laneOf(store, 'insurance');
  const lanes = [insurance, bridges, years, sun];

  return keepAnswers(store, lanes, (state) => {
    const { ground, shelter, selection } = state;
    const field = fieldJudgedBy(state.document);
    const chosen = state.document.features.find(({ id }) => id === selection);
    const looking = state.step === 'shelter' || (chosen !== undefined && isBeltLike(chosen));
    const mapIsThere = shelter.status !== 'idle' && shelter.status !== 'computing';
    const keys = asItStands(state);
    const wishKey = [...keys, state.insuranceWish];
    const bridgeKey = [...keys, state.bridgesOf];
    if (!ground || !field || !looking || !mapIsThere) {
      // What is under way is not stopped because a map is drawn anew; a change of its own key stops it.
      if (!looking || !ground || !field) for (const each of lanes) each.rest([null]);
      return;
    }
    const request = requestOf(state, ground, field);
    const reading = {
      readingHeightM: WIND_READING_HEIGHT_M,
      galeMps: GALE_MPS,
      options: state.shelterOptions,
    };
    const { insuranceWish, bridgesOf } = state;
    if (insuranceWish && insuranceWish.edgeId === selection)
      insurance.want(
        wishKey,
        [
          (signal, onProgress) =>
            runInsurance(runner, request, insuranceWish, reading, { signal, onProgress }),
        ],
        REST_MS,
      );
    else insurance.rest(wishKey);
    const planned = plannedBelts(state);
    if (planned.length > 0)
      years.want(
        keys,
        [(signal, onProgress) => runBeltsWhen(runner, request, planned, { signal, onProgress })],
        REST_MS,
      );
    else years.rest(keys);
    const belt = planned.find(({ id }) => id === bridgesOf && id === selection);
    const { beltYears } = store.getState();
    const when =
      belt && beltYears.status === 'ready' && !beltYears.stale ? beltYears.result?.get(belt.id) : null;
    if (belt && when)
      bridges.want(
        bridgeKey,
        [(signal, onProgress) => runBridges(runner, request, belt, when, reading, { signal, onProgress })],
        REST_MS,
      );
    else bridges.rest(bridgeKey);
    const sunKey = [...keys, state.year, state.shownEnd];
    if (state.playing) return sun.rest(sunKey);
    sun.want(
      sunKey,
      [
        (signal, onProgress) => {
          const { scene, things } = lightScene(state.document, {
            ...sceneOptions(state, ground),
            felled: null,
          });
          return runDarkened(runner, scene, things, patchesOf(state, MOST_PATCH_CELLS), {
            signal,
            onProgress,
          });
        },
      ],
      REST_MS,
    );
  });
}

const requestOf = (state: AppState, ground: Grid, field: FieldFeature) => ({
  document: state.document,
  options: { ...sceneOptions(state, ground), pace: 'usual' as const, felled: null },
  field,
  readingHeightM: WIND_READING_HEIGHT_M,
});

const plannedBelts = ({ document, layout }: AppState): BeltLike[] =>
  chosenFeatures(document, layout)
    .filter(isBeltLike)
    .filter((belt) => belt.properties.kind === 'belt' && isPlanned(belt));
