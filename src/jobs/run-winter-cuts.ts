import { bestOfEach, cutDocument, isAmong, proposedCuts } from '../cuts/cut-answer.ts';
import type { CutsFound } from '../cuts/cut-job.ts';
import { cutPlants } from '../cuts/cut-options.ts';
import type { CutWay, PatchKept, StaysDark, WinterCuts } from '../cuts/cut-result.ts';
import { cutScenes } from '../cuts/cut-scenes.ts';
import { CUT_AIMS, type CutWish, seasonsOf } from '../cuts/cut-types.ts';
import { areaShareOf, hasEnough } from '../cuts/patch-light.ts';
import type { Frame, LonLat } from '../geo/frame.ts';
import { cellsInside, ringToLocal } from '../geo/rasterise.ts';
import type { CareEvent } from '../growth/care.ts';
import { cellCount, type GridSpec } from '../numeric/grid.ts';
import { lightScene, shelterScene } from '../scene/build-scene.ts';
import type { SceneOptions } from '../scene/options.ts';
import { ownersOf } from '../scene/owners.ts';
import type { PatchMask } from '../scene/patch-masks.ts';
import { siteGrid } from '../scene/site-grid.ts';
import type { FeatureId, SiteDocument } from '../site/document.ts';
import type { FieldFeature } from '../site/records/field.ts';
import { QUICK_FINENESS } from '../wind/fineness.ts';
import type { ShelterOptions } from '../wind/shelter-types.ts';
import type { JobRunner, RunOptions } from './messages.ts';
import { runPatchCosts } from './run-patch-costs.ts';
import { runShelter } from './run-shelter.ts';

/** All that the cuts of a winter rest on. */
export interface CutSetting {
  readonly document: SiteDocument;
  readonly wish: CutWish;
  /** How the site is grown; the year is the wish's. */
  readonly scene: SceneOptions;
  /** The patches that are to keep their light. */
  readonly patches: readonly PatchMask[];
  /** The field whose shelter is looked at; null: what the patches lie on is not drawn. */
  readonly field: FieldFeature | null;
  readonly windHeightM: number;
  readonly galeMps: number;
  readonly shelter: ShelterOptions;
}

/** Plants that take less than this share of the light of every dark patch are not looked at. */
const LEAST_TAKEN_SHARE = 0.004;
/** …nor more than those that take most. Our choice. */
const MOST_PLANTS = 18;
/** What takes less than this of a patch's light is not named as what keeps it dark. */
const LEAST_BLAMED_SHARE = 0.01;
/** Cells of the field on which its mean wind is looked at. */
const WIND_CELLS = 300;
const YEAR_BAND = 2;
const SEASON_BAND = 12;
/** Shares of the whole, for the progress. */
const LOOKED = 0.15;
const WEIGHED = 0.3;
const SEARCHED = 0.92;

/** The cuts of one winter that keep every patch's light for five more years, in a few ways; or why it cannot be. */
export async function runWinterCuts(
  runner: JobRunner,
  setting: CutSetting,
  run: RunOptions = {},
): Promise<WinterCuts> {
  const { document, wish, scene: options, patches, field } = setting;
  const { signal } = run;
  const progress = (from: number, to: number) => (done: number) =>
    run.onProgress?.(from + (to - from) * done);
  const seasons = seasonsOf(wish);
  const lightNow = await lightBySeason();
  const darkIn = patches.map((patch, p) => seasons.filter((_, s) => !hasEnough(patch, lightNow[s][p])));
  const dark = patches.filter((_, p) => darkIn[p].length > 0);
  const head = {
    wish,
    fromYear: document.site.baseYear + seasons[0],
    toYear: document.site.baseYear + seasons[seasons.length - 1],
    fieldName: field?.properties.name ?? 'the field',
    patches: patches.length,
    dark: dark.map(({ name }) => name),
  };
  if (dark.length === 0) {
    run.onProgress?.(1);
    return { ...head, ways: [], staysDark: [] };
  }
  const last = { ...options, year: seasons[seasons.length - 1] };
  const built = lightScene(document, last);
  const costs = await runPatchCosts(runner, built.scene, built.things.length, dark, {
    signal,
    onProgress: progress(LOOKED, (LOOKED + WEIGHED) / 2),
  });
  const takenBy = new Map<FeatureId, number>(
    built.things.map(({ id }, thing) => [id, Math.max(...costs.map(({ lightShare }) => lightShare[thing]))]),
  );
  const plants = cutPlants(document, wish, { ...options, year: wish.year })
    .filter(({ id }) => (takenBy.get(id) ?? 0) >= LEAST_TAKEN_SHARE)
    .sort((a, b) => (takenBy.get(b.id) as number) - (takenBy.get(a.id) as number))
    .slice(0, MOST_PLANTS);
  const wind = windCells(setting);
  const cutNow = await meanWindCut([]);
  // What felling each would cost; a lesser cut is taken to cost less by as much of the crown as it leaves.
  const shelterLost: number[] = [];
  for (const { id } of plants) {
    const fell: CareEvent = { what: 'die', year: head.fromYear };
    shelterLost.push(cutNow - (await meanWindCut([{ id, care: fell }])));
    progress((LOOKED + WEIGHED) / 2, WEIGHED)(shelterLost.length / plants.length);
  }
  const found = await runner.run(
    'winter-cuts',
    {
      scenes: cutScenes(document, plants, options, seasons),
      patches: dark,
      options: plants.map(({ options: of }, plant) =>
        of.map(({ kind, works, cropYearsLost, takenShare }) => ({
          kind,
          works,
          cropYearsLost,
          takenShare,
          shelterLost: shelterLost[plant] * takenShare,
        })),
      ),
      aims: CUT_AIMS,
      lightNow: lightNow.map((season) => season.filter((_, p) => darkIn[p].length > 0)),
    },
    { signal, onProgress: progress(WEIGHED, SEARCHED) },
  );
  const ways: CutWay[] = [];
  for (const [i, choice] of found.choices.entries()) {
    const cuts = choice ? proposedCuts(choice.cuts, plants) : [];
    if (!choice || isAmong(ways, cuts)) continue;
    const cutThen = await meanWindCut(cuts.map(({ plant: { id }, option: { care } }) => ({ id, care })));
    ways.push({
      aims: [CUT_AIMS[i]],
      cuts,
      cropYearsLost: cuts.reduce((sum, { option }) => sum + option.cropYearsLost, 0),
      windCut: { without: cutNow, with: cutThen },
      patches: keptPatches(choice),
      proven: choice.proven,
    });
  }
  run.onProgress?.(1);
  return { ...head, ways: bestOfEach(ways), staysDark: staysDark() };

  /** By season and patch: the season's share of open light with nothing cut. */
  async function lightBySeason(): Promise<Float32Array[][]> {
    const places = patches.map(({ grid, readingHeightM }) => ({ grid, readingHeightM }));
    let looked = 0;
    return Promise.all(
      seasons.map(async (year) => {
        const { scene } = lightScene(document, { ...options, year });
        const results = await runner.run('light-on-grids', { scene, places }, { signal });
        looked++;
        progress(0, LOOKED)(looked / seasons.length);
        return results.map(({ grid, lightShare }) =>
          lightShare.slice(SEASON_BAND * cellCount(grid), (SEASON_BAND + 1) * cellCount(grid)),
        );
      }),
    );
  }

  /** Mean wind cut on the field in the first season with some plants cut, over the year. */
  async function meanWindCut(cuts: readonly { id: FeatureId; care: CareEvent }[]): Promise<number> {
    const { scene } = shelterScene(cutDocument(document, cuts), { ...options, year: wish.year });
    const request = {
      scene,
      grid: wind.grid,
      readingHeightM: setting.windHeightM,
      galeMps: setting.galeMps,
      options: setting.shelter,
      fineness: QUICK_FINENESS,
    };
    const { windShare } = await runShelter(runner, request, { signal });
    const year = windShare.subarray(YEAR_BAND * cellCount(wind.grid));
    let [count, sum] = [0, 0];
    for (let cell = 0; cell < wind.mask.length; cell++) {
      if (!wind.mask[cell] || Number.isNaN(year[cell])) continue;
      count++;
      sum += 1 - year[cell];
    }
    return count > 0 ? sum / count : 0;
  }

  function keptPatches({ light }: CutsFound): PatchKept[] {
    const leastShare = (patch: PatchMask, seasonLight: readonly Float32Array[]) =>
      Math.min(...seasonLight.map((season) => areaShareOf(patch, season)));
    return dark.flatMap((patch, p) => {
      if (!found.reachable[p]) return [];
      const whole = patches.indexOf(patch);
      return {
        id: patch.id,
        name: patch.name,
        shareToKeep: patch.shareToKeep,
        areaShareToKeep: patch.areaShare,
        darkIn: darkIn[whole],
        areaShare: {
          without: leastShare(
            patch,
            lightNow.map((season) => season[whole]),
          ),
          with: leastShare(
            patch,
            light.map((season) => season[p]),
          ),
        },
      };
    });
  }

  function staysDark(): StaysDark[] {
    const owners = ownersOf(document);
    const looked = new Set(plants.map(({ id }) => id));
    return dark.flatMap((patch, p) => {
      if (found.reachable[p]) return [];
      const cost = costs.find((one) => one.patch === patch);
      const others = built.things.flatMap(({ id, label }, thing) =>
        looked.has(id) ? [] : [{ id, label, taken: cost?.lightShare[thing] ?? 0 }],
      );
      const worst = others.reduce<(typeof others)[number] | null>(
        (most, one) => (one.taken > (most?.taken ?? LEAST_BLAMED_SHARE) ? one : most),
        null,
      );
      return {
        id: patch.id,
        name: patch.name,
        areaShareToKeep: patch.areaShare,
        mostAreaShare: Math.min(...found.mostLight.map((season) => areaShareOf(patch, season[p]))),
        because: worst && { label: worst.label, owner: owners.get(worst.id) ?? null },
      };
    });
  }
}

/** Coarse cells over the field, and which of them count. */
function windCells({ document, scene: { frame, layout }, field }: CutSetting): {
  readonly grid: GridSpec;
  readonly mask: Uint8Array;
} {
  const choice = { layout, ...(field ? { field: String(field.id) } : {}) };
  const box = siteGrid(document, frame, { ...choice, cellM: 1 });
  const grid = siteGrid(document, frame, {
    ...choice,
    cellM: Math.max(1, Math.sqrt(cellCount(box) / WIND_CELLS)),
  });
  const mask = field ? fieldMask(field, frame, grid) : new Uint8Array(cellCount(grid)).fill(1);
  return { grid, mask };
}

const fieldMask = (field: FieldFeature, frame: Frame, grid: GridSpec): Uint8Array =>
  cellsInside(
    grid,
    field.geometry.coordinates.map((ring) =>
      ringToLocal(
        frame,
        ring.map(([lon, lat]): LonLat => [lon, lat]),
      ),
    ),
  );
