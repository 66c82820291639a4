import type { Frame } from '../geo/frame.ts';
import type { Pace } from '../growth/height-curve.ts';
import { bandOf, PACES } from '../growth/pace-band.ts';
import type { LayoutComparison, LayoutFigures, LayoutYears } from '../layouts/comparison.ts';
import { comparisonOf, type LayoutAnswers, type LayoutsAsked } from '../layouts/comparison-of.ts';
import { cropYears } from '../layouts/crop-years.ts';
import { type LayoutName, treesPlantedIn } from '../layouts/holdings.ts';
import { lightScene } from '../scene/build-scene.ts';
import type { GrowthSpeeds, SceneOptions } from '../scene/options.ts';
import { patchMasks } from '../scene/patch-masks.ts';
import type { SiteDocument } from '../site/document.ts';
import type { FieldFeature } from '../site/records/field.ts';
import type { ShelterOptions } from '../wind/shelter-types.ts';
import { firstYearBetween } from './first-year.ts';
import type { JobRunner, RunOptions } from './messages.ts';
import { runFieldCut, type WindReading } from './run-field-cut.ts';
import { runOutlook } from './run-outlook.ts';
import { type PaceSpeeds, paceSpeeds } from './run-step-years.ts';
import { runParts } from './split-rows.ts';

/** Years after the base year that are looked at for a curve; between two of them the turn is found by halving. */
const YEARS_LOOKED_AT = [0, 2, 4, 6, 8, 10, 13, 16, 20, 25, 30, 40];
/** Enough cells for the share of a patch's area to be within a few percent. */
const MOST_PATCH_CELLS = 300;
const FINEST_CELL_M = 0.5;

export interface LayoutsRequest {
  readonly document: SiteDocument;
  readonly frame: Frame;
  readonly field: FieldFeature;
  /** The one place where a moment of a layout is made; how fast its plants grow comes from `speedsOf`. */
  readonly sceneAt: (layout: LayoutName, year: number, pace: Pace) => SceneOptions;
  /** How fast the plants of a layout grow in its own shelter. */
  readonly speedsOf: (layout: LayoutName) => PaceSpeeds;
  readonly wind: WindReading;
  readonly lightHeightM: number;
}

/** Keeps what was stepped of each layout. */
export function layoutSpeeds(
  runner: JobRunner,
  document: SiteDocument,
  shelter: ShelterOptions,
  sceneAt: LayoutsRequest['sceneAt'],
): LayoutsRequest['speedsOf'] {
  const kept = new Map<LayoutName, PaceSpeeds>();
  return (layout) => {
    const speeds =
      kept.get(layout) ?? paceSpeeds(runner, { document, options: sceneAt(layout, 0, 'usual'), shelter });
    kept.set(layout, speeds);
    return speeds;
  };
}

/** Light and shelter of one layout over the field, in one year at usual growth. */
export async function runLayoutFigures(
  runner: JobRunner,
  request: LayoutsRequest,
  layout: LayoutName,
  year: number,
  run: RunOptions = {},
): Promise<LayoutFigures> {
  const { document, frame, field, sceneAt, speedsOf, wind } = request;
  const { signal } = run;
  const speeds = await speedsOf(layout)('usual', { signal });
  const moment = { ...sceneAt(layout, year, 'usual'), speeds };
  const patches = patchMasks(document, {
    frame,
    layout,
    fields: [field],
    readingHeightM: request.lightHeightM,
    cellM: FINEST_CELL_M,
    mostCells: MOST_PATCH_CELLS,
  });
  const [cut, outlooks] = await Promise.all([
    runFieldCut(runner, document, moment, field, wind, { signal }),
    runOutlook(runner, patches, [year], () => lightScene(document, moment).scene, { signal }),
  ]);
  const lights = outlooks.map(({ byYear }) => byYear.get(year)!);
  const groundM2 = patches.map(
    ({ mask, grid }) => mask.reduce((cells, inside) => cells + inside, 0) * grid.cellM ** 2,
  );
  const weighted = lights.reduce((sum, light, i) => sum + light.meanLightShare * groundM2[i], 0);
  run.onProgress?.(1);
  return {
    meanCut: cut.meanCut,
    shelteredShare: cut.protectedShare,
    patches: patches.length,
    patchesWithEnoughLight: lights.filter(({ enoughLight }) => enoughLight).length,
    meanLightShare: weighted / groundM2.reduce((sum, area) => sum + area, 0),
  };
}

/** How the shelter of one layout and its crops come along, at slow, usual and fast growth. */
export async function runLayoutYears(
  runner: JobRunner,
  request: LayoutsRequest,
  layout: LayoutName,
  wantedShare: number,
  run: RunOptions = {},
): Promise<LayoutYears> {
  const { document, field, sceneAt, speedsOf, wind } = request;
  const speeds = new Map<Pace, GrowthSpeeds | null>();
  for (const pace of PACES) speeds.set(pace, await speedsOf(layout)(pace, { signal: run.signal }));
  const momentAt = (year: number, pace: Pace) => ({
    ...sceneAt(layout, year, pace),
    speeds: speeds.get(pace),
  });
  const plantedIn = treesPlantedIn(document, layout);
  const at = await runParts(
    PACES,
    () => 1,
    run,
    async (pace, { signal, onProgress }) => {
      let looked = 0;
      const look = async (year: number) => {
        const cut = await runFieldCut(runner, document, momentAt(year, pace), field, wind, { signal });
        looked++;
        onProgress?.(Math.min(1, looked / (YEARS_LOOKED_AT.length + 2)));
        return cut;
      };
      const cuts = await Promise.all(YEARS_LOOKED_AT.map(look));
      const shares = cuts.map(({ protectedShare }) => protectedShare);
      return {
        shares,
        from: await turnYear(shares, wantedShare, async (year) => (await look(year)).protectedShare),
        cutAtPlanting: plantedIn === null ? Number.NaN : (await look(Math.max(0, plantedIn))).meanCut,
      };
    },
  );
  const of = (pace: Pace) => at[PACES.indexOf(pace)];
  return {
    years: YEARS_LOOKED_AT,
    shelteredShare: bandOf((pace) => of(pace).shares),
    shelteredFrom: bandOf((pace) => of(pace).from),
    treesPlantedIn: plantedIn,
    cutAtPlanting: plantedIn === null ? null : bandOf((pace) => of(pace).cutAtPlanting),
    crops: cropYears(document, layout, momentAt),
  };
}

/** The first year with the wanted share: that of the years looked at, then within the gap before it. */
async function turnYear(
  shares: readonly number[],
  wantedShare: number,
  look: (year: number) => Promise<number>,
): Promise<number | null> {
  const first = shares.findIndex((share) => share >= wantedShare);
  if (first <= 0) return first === 0 ? YEARS_LOOKED_AT[0] : null;
  const seen = (at: number) => ({ year: YEARS_LOOKED_AT[at], share: shares[at] });
  const { year } = await firstYearBetween(wantedShare, seen(first - 1), seen(first), async (between) => ({
    year: between,
    share: await look(between),
  }));
  return year;
}

/** Two layouts beside each other: what they hold, their light and shelter in a year, how they come along, what they cost. */
export async function runCompareLayouts(
  runner: JobRunner,
  request: LayoutsRequest,
  ask: LayoutsAsked,
  run: RunOptions = {},
): Promise<LayoutComparison> {
  const worked: LayoutAnswers[] = [];
  for (const layout of ask.layouts) {
    const share = (done: number) => run.onProgress?.((worked.length + done) / ask.layouts.length);
    const figures = await runLayoutFigures(runner, request, layout, ask.year, { signal: run.signal });
    const years = await runLayoutYears(runner, request, layout, ask.wantedShare, {
      signal: run.signal,
      onProgress: share,
    });
    worked.push({ figures, years });
  }
  return comparisonOf(request.document, request.field, ask, [worked[0], worked[1]]);
}
