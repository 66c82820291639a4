import { shelterOver } from '../belts/propose-answer.ts';
import type { BeltAim, SearchResult } from '../belts/propose-job.ts';
import {
  FIGURE_CELLS,
  fieldCells,
  fieldOf,
  type ProposeSetting,
  SEARCH_CELLS,
  searchFor,
  shelterRequest,
} from '../belts/propose-setting.ts';
import type { BeltOption } from '../belts/propose-types.ts';
import type { LightResult } from '../light/light-types.ts';
import { lightScene } from '../scene/build-scene.ts';
import type { SceneOptions } from '../scene/options.ts';
import type { FieldFeature } from '../site/records/field.ts';
import { type Fineness, QUICK_FINENESS } from '../wind/fineness.ts';
import { JobError, type JobRunner } from './messages.ts';
import { runLight } from './run-light.ts';
import { runShelter } from './run-shelter.ts';

const LIGHT_CELLS = 900;

type SiteDocument = ProposeSetting['document'];
type Pace = SceneOptions['pace'];
type FieldCells = ReturnType<typeof fieldCells>;

/** Tells how far something is, 0 to 1. */
export type Share = (done: number) => void;

/** What a proposal asks of the search and of the engines. */
export interface ProposeAsks {
  readonly setting: ProposeSetting;
  readonly field: FieldFeature;
  readonly lightCells: FieldCells;
  /** By the shelter engine: share of the field that is sheltered enough, and the mean cut. */
  overIn(document: SiteDocument, year: number, pace: Pace): Promise<{ over: number; mean: number }>;
  /** Nearly the same share for a fraction of the time, from fewer cells and directions. */
  roughlyOver(document: SiteDocument, year: number, pace: Pace): Promise<number>;
  /** By the light engine, in the wished year. */
  lightOf(document: SiteDocument): Promise<LightResult>;
  /** One search; no result where there is no belt to try. */
  search(
    year: number,
    aims: readonly BeltAim[],
    overShare: number,
    share: Share,
  ): Promise<{ result: SearchResult | null; options: readonly BeltOption[] }>;
}

export function proposeAsks(
  runner: JobRunner,
  setting: ProposeSetting,
  signal: AbortSignal | undefined,
): ProposeAsks {
  const { wish } = setting;
  const field = fieldOf(setting);
  const fine = fieldCells(setting, field, FIGURE_CELLS);
  const coarse = fieldCells(setting, field, 2 * SEARCH_CELLS);
  const lightCells = fieldCells(setting, field, LIGHT_CELLS);
  const goOn = () => {
    if (signal?.aborted) throw new JobError('cancelled', 'Cancelled.');
  };
  const over = async (
    document: SiteDocument,
    moment: { year: number; pace: Pace },
    on: FieldCells,
    fineness?: Fineness,
  ) => {
    goOn();
    const request = { ...shelterRequest(setting, document, moment, on.grid), fineness };
    return shelterOver(await runShelter(runner, request, { signal }), on.mask, wish);
  };
  return {
    setting,
    field,
    lightCells,
    overIn: (document, year, pace) => over(document, { year, pace }, fine),
    roughlyOver: async (document, year, pace) =>
      (await over(document, { year, pace }, coarse, QUICK_FINENESS)).over,
    lightOf(document) {
      goOn();
      const { scene } = lightScene(document, { ...setting.scene, year: wish.year, pace: 'usual' });
      const { grid } = lightCells;
      return runLight(runner, { scene, grid, readingHeightM: setting.lightHeightM }, { signal });
    },
    async search(year, aims, overShare, share) {
      goOn();
      const { request, options } = searchFor(setting, year, aims, overShare);
      if (options.length === 0) return { result: null, options };
      const result: SearchResult = await runner.run('propose-belts', request, { signal, onProgress: share });
      return { result, options };
    },
  };
}
