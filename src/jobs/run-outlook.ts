import type { LightScene } from '../light/light-types.ts';
import type { GridSpec } from '../numeric/grid.ts';
import type { JobRunner, RunOptions } from './messages.ts';

/** A patch whose light is followed over the years. */
export interface WatchedPatch {
  readonly grid: GridSpec;
  /** 1 for each cell of the grid that belongs to the patch. */
  readonly mask: Uint8Array;
  readonly readingHeightM: number;
  /** Enough: at least `areaShare` of the cells keep at least `shareToKeep` of open light over the growing season. */
  readonly shareToKeep: number;
  readonly areaShare: number;
}

export interface PatchLight {
  readonly meanLightShare: number;
  readonly areaShareWithEnoughLight: number;
  readonly enoughLight: boolean;
}

export interface PatchYears {
  /** By year after planting: the years asked for, and those looked at to find the turn. */
  readonly byYear: ReadonlyMap<number, PatchLight>;
  /** First year from which it is too dark in every year looked at; null: never. */
  readonly darkFromYear: number | null;
}

const SEASON_BAND = 12;

function patchLight(patch: WatchedPatch, lightShare: Float32Array): PatchLight {
  const cells = patch.mask.length;
  let counted = 0;
  let enough = 0;
  let sum = 0;
  for (let cell = 0; cell < cells; cell++) {
    const share = lightShare[SEASON_BAND * cells + cell];
    if (!patch.mask[cell] || Number.isNaN(share)) continue;
    counted++;
    sum += share;
    if (share >= patch.shareToKeep) enough++;
  }
  const areaShareWithEnoughLight = counted > 0 ? enough / counted : 0;
  return {
    meanLightShare: counted > 0 ? sum / counted : 0,
    areaShareWithEnoughLight,
    enoughLight: counted > 0 && areaShareWithEnoughLight >= patch.areaShare,
  };
}

/** The bracket in which a patch turns dark for good: too dark at `dark` and in every later year looked at, enough at `bright`. */
function turn(byYear: ReadonlyMap<number, PatchLight>): { bright: number | null; dark: number | null } {
  let dark: number | null = null;
  for (const year of [...byYear.keys()].sort((a, b) => b - a)) {
    if (byYear.get(year)!.enoughLight) return { bright: year, dark };
    dark = year;
  }
  return { bright: null, dark };
}

/**
 * Light of each patch at the years asked for, and the year from which it stays too dark, found by halving the gap
 * between the last bright and the first dark year looked at.
 * @param sceneAt the scene a number of years after planting; called once for each look at a year.
 */
export async function runOutlook(
  runner: JobRunner,
  patches: readonly WatchedPatch[],
  years: readonly number[],
  sceneAt: (year: number) => LightScene,
  options: RunOptions = {},
): Promise<PatchYears[]> {
  const found = patches.map(() => new Map<number, PatchLight>());
  let done = 0;
  // The turn of a patch between two years five apart takes about two more years to find.
  const expected = years.length + 2 * patches.length;

  /** One job a year, for all patches that need it. */
  async function look(year: number, indices: readonly number[]): Promise<void> {
    const places = indices.map((index) => ({
      grid: patches[index].grid,
      readingHeightM: patches[index].readingHeightM,
    }));
    const request = { scene: sceneAt(year), places };
    const results = await runner.run('light-on-grids', request, { signal: options.signal });
    indices.forEach((index, i) => {
      found[index].set(year, patchLight(patches[index], results[i].lightShare));
    });
    done++;
    options.onProgress?.(Math.min(1, done / expected));
  }

  if (patches.length === 0) return [];
  const everyPatch = patches.map((_, index) => index);
  await Promise.all(years.map((year) => look(year, everyPatch)));
  for (;;) {
    const wanted = new Map<number, number[]>();
    patches.forEach((_, index) => {
      const { bright, dark } = turn(found[index]);
      if (dark === null || bright === null || dark - bright <= 1) return;
      const year = bright + Math.floor((dark - bright) / 2);
      wanted.set(year, [...(wanted.get(year) ?? []), index]);
    });
    if (wanted.size === 0) break;
    await Promise.all([...wanted].map(([year, indices]) => look(year, indices)));
  }
  return found.map((byYear) => ({ byYear, darkFromYear: turn(byYear).dark }));
}
