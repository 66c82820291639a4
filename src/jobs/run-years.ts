import type { GrownThings, LightScene } from '../light/light-types.ts';
import { cellCount, type GridSpec } from '../numeric/grid.ts';
import { sameContent } from '../numeric/same-content.ts';
import { shelterScene } from '../scene/build-scene.ts';
import { lightYears } from '../scene/build-years.ts';
import type { SceneOptions } from '../scene/options.ts';
import type { SiteDocument } from '../site/document.ts';
import { QUICK_FINENESS } from '../wind/fineness.ts';
import type { ShelterScene } from '../wind/shelter-types.ts';
import type { YearMaps } from '../years/year-figures.ts';
import { withGroundNear } from './ground-near.ts';
import type { JobRunner, RunOptions } from './messages.ts';
import type { WindReading } from './run-field-cut.ts';
import { runLightYears } from './run-light-years.ts';

export interface YearsRequest {
  readonly document: SiteDocument;
  /** Its year is not looked at. */
  readonly options: SceneOptions;
  readonly grid: GridSpec;
  /** Years after the base year, in any order. */
  readonly years: readonly number[];
  readonly reading: WindReading;
  readonly lightHeightM: number;
}

/** What one year was worked out from, and what came of it. */
interface KeptYear {
  readonly things: GrownThings;
  readonly shelter: ShelterScene;
  readonly maps: YearMaps;
}

/**
 * The years of one grid as they were last worked out: a year in which nothing has changed is not worked out again.
 * What they were worked out with besides their things is the same for all.
 */
export interface YearsCache {
  common: YearsCommon | null;
  readonly years: Map<number, KeptYear>;
}
interface YearsCommon extends Pick<YearsRequest, 'grid' | 'reading' | 'lightHeightM'> {
  readonly light: Omit<LightScene, keyof GrownThings>;
}
export const emptyYears = (): YearsCache => ({ common: null, years: new Map() });

const LIGHT_PART = 0.6;

/**
 * Light and shelter of a field in many years, cell by cell, along the rays and from the directions that follow a hand.
 * @returns by year, those asked for. Mutates `cache`.
 */
export async function runYears(
  runner: JobRunner,
  request: YearsRequest,
  cache: YearsCache,
  run: RunOptions = {},
): Promise<ReadonlyMap<number, YearMaps>> {
  const { document, options, grid, years, reading, lightHeightM } = request;
  const { scene, years: things } = lightYears(
    document,
    years.map((year) => ({ ...options, year })),
  );
  const shelters = years.map((year) =>
    withGroundNear(shelterScene(document, { ...options, year }).scene, [grid]),
  );
  const { crowns: _, prisms: __, ...light } = scene;
  const common = { grid, light, reading, lightHeightM };
  if (!sameContent(cache.common, common)) {
    cache.years.clear();
    cache.common = common;
  }
  const missing = years.flatMap((year, k) => {
    const kept = cache.years.get(year);
    const same = kept && sameContent(kept.things, things[k]) && sameContent(kept.shelter, shelters[k]);
    return same ? [] : [k];
  });
  if (missing.length > 0) {
    let lightDone = 0;
    let windDone = 0;
    const tell = () => run.onProgress?.(LIGHT_PART * lightDone + (1 - LIGHT_PART) * windDone);
    const lights = await runLightYears(
      runner,
      { scene, years: missing.map((k) => things[k]), grid, readingHeightM: lightHeightM },
      {
        signal: run.signal,
        onProgress: (done) => {
          lightDone = done;
          tell();
        },
      },
    );
    const winds = await Promise.all(
      missing.map(async (k) => {
        const { windShare } = await runner.run(
          'shelter',
          { ...reading, scene: shelters[k], grid, fineness: QUICK_FINENESS },
          { signal: run.signal },
        );
        windDone += 1 / missing.length;
        tell();
        // The growing season's band.
        return windShare.slice(0, cellCount(grid));
      }),
    );
    for (const [i, k] of missing.entries())
      cache.years.set(years[k], {
        things: things[k],
        shelter: shelters[k],
        maps: {
          lightShare: lights[i].lightShare,
          directHours: lights[i].directHours,
          windShare: winds[i],
        },
      });
  }
  return new Map(years.map((year) => [year, (cache.years.get(year) as KeptYear).maps]));
}
