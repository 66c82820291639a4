import {
  bestOfEach,
  isOfBelts,
  lightLost,
  proposedBelts,
  shelterOver,
  underBelts,
} from '../belts/propose-answer.ts';
import type { BeltAim, SearchResult } from '../belts/propose-job.ts';
import type { BeltAlternative, BeltProposals, GrowthBand } from '../belts/propose-result.ts';
import {
  checkWish,
  FIGURE_CELLS,
  fieldAreaM2,
  fieldCells,
  fieldOf,
  type ProposeSetting,
  planted,
  SEARCH_CELLS,
  searchFor,
  shelterRequest,
} from '../belts/propose-setting.ts';
import type { BeltOption } from '../belts/propose-types.ts';
import type { LightResult } from '../light/light-types.ts';
import { lightScene } from '../scene/build-scene.ts';
import type { SceneOptions } from '../scene/options.ts';
import { LIVE_DIRECTIONS_A_SECTOR } from '../wind/shelter-directions.ts';
import { JobError, type JobRunner, type RunOptions } from './messages.ts';
import { runLight } from './run-light.ts';
import { runShelter } from './run-shelter.ts';

/** How often a search is asked for more where the engine finds a little less than it promised. */
const MOST_CORRECTIONS = 3;
const CORRECTION_MARGIN = 0.01;
/** Years after the wished one that are looked at. */
const LATER_YEARS = [3, 6, 10, 15, 20];
const LIGHT_CELLS = 900;
/** Shares of the whole, for the progress. */
const SEARCHED = 0.35;
const SOONER = 0.6;

type SiteDocument = ProposeSetting['document'];
type Pace = SceneOptions['pace'];

interface Found {
  readonly belts: readonly BeltOption[];
  readonly enough: boolean;
}

/**
 * Belts for a field that cut the wind as wished: with least land, with least shade, and soonest, each with the figures
 * that the engines have for it; or why it cannot be.
 * @throws BadInputError for a wish that means nothing
 */
export async function runProposeBelts(
  runner: JobRunner,
  setting: ProposeSetting,
  run: RunOptions = {},
): Promise<BeltProposals> {
  checkWish(setting.wish);
  const { wish } = setting;
  const { signal } = run;
  const progress = (done: number) => run.onProgress?.(done);
  const field = fieldOf(setting);
  const fine = fieldCells(setting, field, FIGURE_CELLS);
  const coarse = fieldCells(setting, field, 2 * SEARCH_CELLS);

  /** By the engine: share of the field that is sheltered enough. */
  async function overIn(document: SiteDocument, year: number, pace: Pace, on = fine) {
    if (signal?.aborted) throw new JobError('cancelled', 'Cancelled.');
    const asked = shelterRequest(setting, document, { year, pace }, on.grid);
    // Which year it is needs no finer rose than the search had.
    const request = on === coarse ? { ...asked, directionsASector: LIVE_DIRECTIONS_A_SECTOR } : asked;
    return shelterOver(await runShelter(runner, request, { signal }), on.mask, wish);
  }

  async function search(
    year: number,
    aims: readonly BeltAim[],
    overShare: number,
    share: (done: number) => void,
  ) {
    const { request, options } = searchFor(setting, year, aims, overShare);
    if (options.length === 0) return { result: null, options };
    const result: SearchResult = await runner.run('propose-belts', request, { signal, onProgress: share });
    return { result, options };
  }

  /** A choice for each aim that the engine agrees with. */
  async function settled(
    year: number,
    aims: readonly BeltAim[],
    share: (done: number) => void,
    corrections = MOST_CORRECTIONS,
  ) {
    let asked = wish.overShare;
    const found = new Map<BeltAim, Found>();
    let cutThere = 0;
    let tried = 0;
    for (let round = 0; round <= corrections; round++) {
      const open = aims.filter((aim) => !found.get(aim)?.enough);
      const { result, options } = await search(year, open, asked, (done) =>
        share((round + done) / (corrections + 1)),
      );
      tried = options.length;
      if (!result) break;
      cutThere = Math.max(cutThere, result.cutThere);
      let short = 0;
      for (const [i, aim] of open.entries()) {
        const choice = result.choices[i];
        const belts = choice.chosen.map((one) => options[one]);
        const over = (await overIn(planted(setting, belts).document, year, 'usual')).over;
        if (over < wish.overShare && choice.enough) short = Math.max(short, wish.overShare - over);
        if (over >= wish.overShare || round === 0) found.set(aim, { belts, enough: over >= wish.overShare });
      }
      if (short === 0 || asked >= 1) break;
      asked = Math.min(1, asked + short + CORRECTION_MARGIN);
    }
    share(1);
    return { found, cutThere, tried };
  }

  const overShareNow = (await overIn(setting.document, wish.year, 'usual')).over;
  const head = {
    wish,
    fieldName: field.properties.name ?? 'the field',
    fieldAreaM2: fieldAreaM2(field),
    overShareNow,
  };
  if (overShareNow >= wish.overShare) {
    progress(1);
    return { ...head, tried: 0, alternatives: [], help: null };
  }
  const { found, cutThere, tried } = await settled(wish.year, ['land', 'shade'], (done) =>
    progress(done * SEARCHED),
  );
  const land = found.get('land');
  const shade = found.get('shade');
  const reached = [land, shade].filter((one) => one?.enough);
  const light = await lightOf(setting.document);

  if (reached.length === 0) {
    const later = await firstLaterYear();
    progress(SOONER);
    const most =
      land && land.belts.length > 0 ? [{ ...(await figures(land.belts)), aims: ['most' as const] }] : [];
    progress(1);
    return { ...head, tried, alternatives: most, help: { year: later, cutShare: cutThere } };
  }

  const ways: BeltAlternative[] = [];
  for (const one of [land, shade])
    if (one?.enough && !ways.some((way) => isOfBelts(way, one.belts))) ways.push(await figures(one.belts));
  const earliest = Math.min(...ways.map(({ fromYear }) => fromYear.usual ?? wish.year));
  const sooner = await soonest(earliest);
  if (sooner) ways.push(await figures(sooner));
  progress(1);
  return { ...head, tried, alternatives: bestOfEach(ways), help: null };

  /** The earliest year in which any belts do, by halving the years before; null: none earlier. */
  async function soonest(before: number): Promise<readonly BeltOption[] | null> {
    let [low, high] = [0, before];
    let best: readonly BeltOption[] | null = null;
    for (let step = 0; high - low > 1; step++) {
      const year = Math.floor((low + high) / 2);
      const at = await settled(
        year,
        ['land'],
        (done) => progress(SOONER + (0.95 - SOONER) * (1 - 0.5 ** (step + done))),
        1,
      );
      const choice = at.found.get('land');
      if (choice?.enough && choice.belts.length > 0) {
        high = year;
        best = choice.belts;
      } else low = year;
    }
    return best;
  }

  async function firstLaterYear(): Promise<number | null> {
    for (const [i, later] of LATER_YEARS.entries()) {
      const { result } = await search(wish.year + later, ['land'], wish.overShare, (done) =>
        progress(SEARCHED + ((SOONER - SEARCHED) * (i + done)) / LATER_YEARS.length),
      );
      if (result?.choices[0].enough) return wish.year + later;
    }
    return null;
  }

  async function lightOf(document: SiteDocument): Promise<LightResult> {
    const { grid } = lightCells();
    const { scene } = lightScene(document, { ...setting.scene, year: wish.year, pace: 'usual' });
    return runLight(runner, { scene, grid, readingHeightM: setting.lightHeightM }, { signal });
  }

  function lightCells() {
    return fieldCells(setting, field, LIGHT_CELLS);
  }

  /**
   * The year from which it is enough, by halving. A coarse grid serves: it is set right by what the fine one has for
   * the wished year.
   */
  async function fromYear(document: SiteDocument, pace: Pace, overThen: number): Promise<number | null> {
    const onCoarse = async (year: number) => (await overIn(document, year, pace, coarse)).over;
    const less = overThen - (await onCoarse(wish.year));
    const enough = async (year: number) => (await onCoarse(year)) + less >= wish.overShare;
    const then = overThen >= wish.overShare;
    let [low, high] = then ? [-1, wish.year] : [wish.year, wish.year + LATER_YEARS[LATER_YEARS.length - 1]];
    if (!then && !(await enough(high))) return null;
    while (high - low > 1) {
      const year = Math.floor((low + high) / 2);
      if (await enough(year)) high = year;
      else low = year;
    }
    return high;
  }

  async function figures(belts: readonly BeltOption[]): Promise<BeltAlternative> {
    const { document } = planted(setting, belts);
    const at = async (pace: Pace) => overIn(document, wish.year, pace);
    const [slow, usual, fast] = [await at('slow'), await at('usual'), await at('fast')];
    const cells = lightCells();
    const lost = lightLost(light, await lightOf(document), cells.mask, underBelts(belts, cells.grid));
    const years: GrowthBand<number | null> = {
      slow: await fromYear(document, 'slow', slow.over),
      usual: await fromYear(document, 'usual', usual.over),
      fast: await fromYear(document, 'fast', fast.over),
    };
    const proposed = proposedBelts(setting, belts);
    return {
      aims: [],
      belts: proposed,
      landM2: proposed.reduce((sum, { landM2 }) => sum + landM2, 0),
      darkM2: lost.darkM2,
      overShare: { slow: slow.over, usual: usual.over, fast: fast.over },
      meanCut: usual.mean,
      fromYear: years,
      light: lost.light,
      enough: usual.over >= wish.overShare,
    };
  }
}
