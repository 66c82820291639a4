/** The search as one job: builds the quick model, finds the best cuts for each aim, and has each checked by the engine. */
import { computeLightOnGrids } from '../light/compute-light.ts';
import { cellCount } from '../numeric/grid.ts';
import { type Steps, within } from '../numeric/steps.ts';
import { type CutPatch, cutModel } from './cut-model.ts';
import { type CutScene, sceneOfChoice } from './cut-scenes.ts';
import { type CutAim, type CutKind, SHELTER_STEP } from './cut-types.ts';
import { hasEnough } from './patch-light.ts';
import {
  type Choice,
  type Cut,
  compareCosts,
  isEnough,
  lightWith,
  type SearchTask,
  searchCuts,
} from './search-cuts.ts';

/** What one option costs. */
export interface OptionCosts {
  readonly kind: CutKind;
  readonly works: number;
  readonly cropYearsLost: number;
  /** By how much the field's wind is cut less, share. */
  readonly shelterLost: number;
  readonly takenShare: number;
}

export interface CutsRequest {
  /** One a season, in their order. */
  readonly scenes: readonly CutScene[];
  /** Those that get too dark. */
  readonly patches: readonly CutPatch[];
  /** By plant and option. */
  readonly options: readonly (readonly OptionCosts[])[];
  readonly aims: readonly CutAim[];
  /** By season and patch: share of the season's open light with nothing cut, a value a cell of the patch's grid. */
  readonly lightNow: readonly (readonly Float32Array[])[];
}

/** A set of cuts with the light that the engine finds with them, by season and patch. */
export interface CutsFound {
  readonly cuts: readonly Cut[];
  /** Whether all other sets were looked at. */
  readonly proven: boolean;
  readonly light: readonly (readonly Float32Array[])[];
}

export interface CutsResult {
  /** One for each aim; null: none was found. */
  readonly choices: readonly (CutsFound | null)[];
  /** By patch: whether it keeps its light with every plant cut as far as may be. */
  readonly reachable: readonly boolean[];
  /** Light with every plant cut as far as may be. */
  readonly mostLight: readonly (readonly Float32Array[])[];
}

/** How often a search is repeated where the engine finds less light than it promised. */
const MOST_ROUNDS = 12;
/** Years of crop are told apart this finely when sets of cuts are compared. */
const CROP_STEP_YEARS = 0.1;
/** The least of something may take so many works more than the fewest. */
const MORE_WORKS = 1;
const SEASON_BAND = 12;
const MODEL_SHARE = 0.3;
const CHECKED_SHARE = 0.15;

/** What counts first, second and so on for each aim. */
function costsFor(aim: CutAim, { works, cropYearsLost, shelterLost, takenShare }: OptionCosts): number[] {
  const crop = Math.round(cropYearsLost / CROP_STEP_YEARS);
  const shelter = Math.max(0, Math.round(shelterLost / SHELTER_STEP));
  if (aim === 'crop') return [crop, works, shelter, takenShare];
  if (aim === 'shelter') return [shelter, works, crop, takenShare];
  return [works, crop, shelter, takenShare];
}

type PatchLights = readonly Float32Array[];

/** The seasons that decide: the first, one in which what was thinned has closed most, and the last. */
const decidingSeasons = (count: number): number[] => [
  ...new Set([0, Math.floor((count - 1) / 2), count - 1]),
];

export function* winterCuts(request: CutsRequest): Steps<CutsResult> {
  const { scenes, patches, options, aims, lightNow } = request;
  const deciding = decidingSeasons(scenes.length);
  /** The last season is the darkest, as a rule: what fails fails there. */
  const seasons = [...scenes.keys()].reverse();
  const engine = lightEngine(request);
  const everything = options.map((of, plant): Cut => [plant, of.length - 1]);
  const mostLight: PatchLights[] = [];
  for (const season of scenes.keys())
    mostLight.push(
      yield* within(
        engine(everything, season),
        (CHECKED_SHARE * season) / scenes.length,
        CHECKED_SHARE / scenes.length,
      ),
    );
  const reachable = patches.map((patch, p) => mostLight.every((season) => hasEnough(patch, season[p])));
  /** Numbers of the patches that can be kept. */
  const open = [...patches.keys()].filter((p) => reachable[p]);
  if (open.length === 0) return { choices: aims.map(() => null), reachable, mostLight };
  let model = yield* within(
    cutModel(
      scenes,
      deciding,
      open.map((p) => patches[p]),
      options.map((of) => of.length),
      lightNow.map((season) => open.map((p) => season[p])),
    ),
    CHECKED_SHARE,
    MODEL_SHARE,
  );
  const correction = new Float64Array(model.light.length);
  const choices: (CutsFound | null)[] = [];
  let done = CHECKED_SHARE + MODEL_SHARE;
  const part = (1 - done) / aims.length;
  for (const aim of aims) {
    choices.push(yield* within(settled(aim), done, part));
    done += part;
  }
  return { choices, reachable, mostLight };

  /** Goes through the seasons until one is too dark: that one; null: none is. */
  function* darkSeason(cuts: readonly Cut[]): Steps<number | null> {
    for (const season of seasons) {
      const light = yield* engine(cuts, season);
      if (!open.every((p) => hasEnough(patches[p], light[p]))) return season;
    }
    return null;
  }

  /** A choice that the engine agrees with. */
  function* settled(aim: CutAim): Steps<CutsFound | null> {
    const costsOf = ([plant, option]: Cut) => costsFor(aim, options[plant][option]);
    for (let round = 0; round < MOST_ROUNDS; round++) {
      const task: SearchTask = {
        model,
        correction,
        allowed: ([plant, option]) => aim !== 'standing' || options[plant][option].kind !== 'fell',
        costs: costsOf,
        works: ([plant, option]) => options[plant][option].works,
        moreWorks: aim === 'crop' || aim === 'shelter' ? MORE_WORKS : 0,
      };
      const choice = yield* within(searchCuts(task), round / MOST_ROUNDS, 0.5 / MOST_ROUNDS);
      if (!choice) return null;
      const dark = yield* within(darkSeason(choice.cuts), (round + 0.5) / MOST_ROUNDS, 0.5 / MOST_ROUNDS);
      if (dark === null) return yield* within(withoutNeedless(choice, costsOf), (round + 1) / MOST_ROUNDS, 0);
      yield* learn(choice.cuts, dark);
    }
    return null;
  }

  /** Leaves out what the engine, which may find more than the model, does not need; the dearest first. */
  function* withoutNeedless({ cuts, proven }: Choice, costsOf: (cut: Cut) => number[]): Steps<CutsFound> {
    let kept = cuts;
    for (const cut of [...cuts].sort((a, b) => compareCosts(costsOf(b), costsOf(a)))) {
      const without = kept.filter((one) => one !== cut);
      if (without.length > 0 && (yield* darkSeason(without)) === null) kept = without;
    }
    const light: PatchLights[] = [];
    for (const season of scenes.keys()) light.push(yield* engine(kept, season));
    return { cuts: kept, proven, light };
  }

  /**
   * Where the engine finds less than the model promised, the model promises less from now on; where it would promise
   * the same again, as it looks at fewer cells and seasons, it must reach more of them.
   */
  function* learn(cuts: readonly Cut[], darkIn: number): Steps<void> {
    const promised = lightWith(model, new Float64Array(model.light.length), cuts);
    for (const { patch, season, first, end } of model.wanted) {
      const light = yield* engine(cuts, season);
      for (let spot = first; spot < end; spot++) {
        const less = light[open[patch]][model.cellOf[spot]] - promised[spot];
        correction[spot] = Math.min(correction[spot], less);
      }
    }
    if (!isEnough(model, lightWith(model, correction, cuts))) return;
    const light = yield* engine(cuts, darkIn);
    const tooDark = (patch: number) => !hasEnough(patches[open[patch]], light[open[patch]]);
    model = {
      ...model,
      wanted: model.wanted.map((one) => {
        if (!tooDark(one.patch)) return one;
        const { first, end, shareToKeep } = one;
        let bright = 0;
        const then = lightWith(model, correction, cuts);
        for (let spot = first; spot < end; spot++) if (then[spot] >= shareToKeep) bright++;
        return { ...one, spotsNeeded: Math.min(end - first, bright + 1) };
      }),
    };
  }
}

/** The light engine on the patches in one season with some cuts; each is asked for once. */
function lightEngine({ scenes, patches, options }: CutsRequest) {
  const known = new Map<string, PatchLights>();
  const places = patches.map(({ grid, readingHeightM }) => ({ grid, readingHeightM }));
  return function* (cuts: readonly Cut[], season: number): Steps<PatchLights> {
    const key = `${season}: ${cuts.join(' ')}`;
    const before = known.get(key);
    if (before) return before;
    const chosen = new Int16Array(options.length).fill(-1);
    for (const [plant, option] of cuts) chosen[plant] = option;
    const results = yield* computeLightOnGrids({ scene: sceneOfChoice(scenes[season], chosen), places });
    const light = results.map(({ grid, lightShare }) =>
      lightShare.slice(SEASON_BAND * cellCount(grid), (SEASON_BAND + 1) * cellCount(grid)),
    );
    known.set(key, light);
    return light;
  };
}
