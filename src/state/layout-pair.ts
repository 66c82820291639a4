import type { StoreApi } from 'zustand/vanilla';
import { fieldGrid } from '../belts/field-cut.ts';
import type { JobRunner, RunOptions } from '../jobs/messages.ts';
import {
  type LayoutsRequest,
  layoutSpeeds,
  runLayoutFigures,
  runLayoutYears,
} from '../jobs/run-compare-layouts.ts';
import { runLight } from '../jobs/run-light.ts';
import { runShelter } from '../jobs/run-shelter.ts';
import type { LayoutFigures, LayoutYears } from '../layouts/comparison.ts';
import type { LayoutName } from '../layouts/holdings.ts';
import type { Grid } from '../numeric/grid.ts';
import { lightScene, shelterScene } from '../scene/build-scene.ts';
import type { FieldFeature } from '../site/records/field.ts';
import { asItStands, type Key, sameKey } from './answer-keys.ts';
import type { KeptAnswers } from './keep-answers.ts';
import { keepWhileOpen } from './keep-while-open.ts';
import type { Pass } from './lane.ts';
import type { LayoutPair, LayoutPairFound, PairMaps } from './layout-pair-found.ts';
import type { App, AppState } from './model.ts';
import { pairField, pairOf } from './pair-shown.ts';
import { READING_HEIGHT_M, WIND_READING_HEIGHT_M } from './reading-height.ts';
import { sceneOptions } from './scene-options.ts';
import { GALE_MPS } from './work.ts';

/** Cells along the longer side of a map. */
const CELLS_ACROSS = { 'wind-cut': 80, 'light-share': 60 } as const;
/** A hand that moves the years rests this long before anything starts. */
const REST_MS = 150;

/** Keeps two layouts worked out while they are looked at beside each other: the maps first, then figures, then years. */
export function keepLayoutPair(store: StoreApi<App>, runner: JobRunner): KeptAnswers {
  const passesOf = createPairPasses(runner);
  return keepWhileOpen<LayoutPairFound>(
    store,
    {
      read: ({ layoutPair }) => layoutPair,
      write: (layoutPair) => ({ layoutPair }),
      keyOf: (state) => [...worldOf(state), state.comparing, state.year],
    },
    (state) => {
      const field = pairField(state);
      const pair = pairOf(state);
      return state.dialog === 'two-layouts' && state.ground && field && pair
        ? passesOf(state, state.ground, field, pair)
        : null;
    },
    REST_MS,
  );
}

const worldOf = (state: AppState): Key => [...asItStands(state), state.document.site.lightToKeep];

/** The one place on the screen where a moment of a layout is made. */
const momentsOf =
  (state: AppState, ground: Grid): LayoutsRequest['sceneAt'] =>
  (layout, year, pace) => ({
    ...sceneOptions(
      { ...state, layout, felled: null, shownEnd: pace === 'usual' ? null : `${pace}-growth` },
      ground,
      year,
    ),
    // Those of the state are of the layout that is shown.
    speeds: null,
  });

/** What is asked of two layouts of a state. */
const layoutsRequest = (
  state: AppState,
  ground: Grid,
  field: FieldFeature,
  speedsOf: LayoutsRequest['speedsOf'],
): LayoutsRequest => ({
  document: state.document,
  frame: state.frame,
  field,
  sceneAt: momentsOf(state, ground),
  speedsOf,
  wind: { readingHeightM: WIND_READING_HEIGHT_M, galeMps: GALE_MPS, options: state.shelterOptions },
  lightHeightM: READING_HEIGHT_M.ground,
});

/** What was worked out of the last pair stays, as far as it holds. */
function createPairPasses(runner: JobRunner) {
  let figures: LayoutPairFound['figures'] = null;
  let figuresOf: Key | null = null;
  let years: LayoutPairFound['years'] = null;
  let yearsOf: Key | null = null;
  let speeds: LayoutsRequest['speedsOf'] | null = null;
  let speedsOf: Key | null = null;

  return (state: AppState, ground: Grid, field: FieldFeature, pair: LayoutPair): Pass<LayoutPairFound>[] => {
    const { year, comparing } = state;
    const world = worldOf(state);
    if (speeds === null || !sameKey(speedsOf, world)) {
      speeds = layoutSpeeds(runner, state.document, state.shelterOptions, momentsOf(state, ground));
      speedsOf = world;
    }
    const request = layoutsRequest(state, ground, field, speeds);
    const ofPair: Key = [...world, ...pair, field.id];
    const ofYears: Key = [...ofPair, comparing.wantedShare];
    let maps: PairMaps | null = null;
    const found = (): LayoutPairFound => ({
      layouts: pair,
      fieldId: field.id,
      wantedShare: comparing.wantedShare,
      // The maps are the first pass.
      maps: maps as PairMaps,
      figures: sameKey(figuresOf, ofPair) ? figures : null,
      years: sameKey(yearsOf, ofYears) ? years : null,
    });
    return [
      async (signal, onProgress) => {
        maps = await pairMaps(runner, request, pair, year, comparing.picture, { signal, onProgress });
        return found();
      },
      async (signal, onProgress) => {
        if (!sameKey(figuresOf, ofPair) || figures?.year !== year) {
          const of = await both<LayoutFigures>(pair, { signal, onProgress }, (layout, run) =>
            runLayoutFigures(runner, request, layout, year, run),
          );
          figures = { year, of };
          figuresOf = ofPair;
        }
        return found();
      },
      async (signal, onProgress) => {
        if (!sameKey(yearsOf, ofYears)) {
          years = await both<LayoutYears>(pair, { signal, onProgress }, (layout, run) =>
            runLayoutYears(runner, request, layout, comparing.wantedShare, run),
          );
          yearsOf = ofYears;
        }
        return found();
      },
    ];
  };
}

async function both<Answer>(
  [a, b]: LayoutPair,
  { signal, onProgress }: RunOptions,
  work: (layout: LayoutName, run: RunOptions) => Promise<Answer>,
): Promise<readonly [Answer, Answer]> {
  const first = await work(a, { signal, onProgress: (done) => onProgress?.(done / 2) });
  const second = await work(b, { signal, onProgress: (done) => onProgress?.((1 + done) / 2) });
  return [first, second];
}

async function pairMaps(
  runner: JobRunner,
  { document, field, frame, sceneAt, speedsOf, wind, lightHeightM }: LayoutsRequest,
  pair: LayoutPair,
  year: number,
  picture: PairMaps['picture'],
  run: RunOptions,
): Promise<PairMaps> {
  const { grid } = fieldGrid(field, frame, CELLS_ACROSS[picture]);
  const momentOf = async (layout: LayoutName, { signal }: RunOptions) => ({
    ...sceneAt(layout, year, 'usual'),
    speeds: await speedsOf(layout)('usual', { signal }),
  });
  if (picture === 'wind-cut')
    return {
      picture,
      year,
      results: await both(pair, run, async (layout, options) => {
        const { scene } = shelterScene(document, await momentOf(layout, options));
        return runShelter(runner, { ...wind, scene, grid }, options);
      }),
    };
  return {
    picture,
    year,
    results: await both(pair, run, async (layout, options) => {
      const { scene } = lightScene(document, await momentOf(layout, options));
      return runLight(runner, { scene, grid, readingHeightM: lightHeightM }, options);
    }),
  };
}
