import type { JobRunner } from '../jobs/messages.ts';
import { type DarkTurn, runDarkeners } from '../jobs/run-darkeners.ts';
import { type PatchLight, runOutlook, type WatchedPatch } from '../jobs/run-outlook.ts';
import type { Grid } from '../numeric/grid.ts';
import { lightScene } from '../scene/build-scene.ts';
import { type PatchMask, patchMasks } from '../scene/patch-masks.ts';
import { takenField } from '../site/chosen-features.ts';
import { type Key, sameKey, shown } from './answer-keys.ts';
import { fieldsOf } from './area-figures.ts';
import type { Pass } from './lane.ts';
import { type AppState, type PatchOutlook, YEARS_LOOKED_AT } from './model.ts';
import { READING_HEIGHT_M } from './reading-height.ts';
import { sceneOptions } from './scene-options.ts';

/** Enough cells for the share of a patch's area to be within a few percent. */
export const MOST_CELLS = 300;
const FINEST_CELL_M = 0.5;

/**
 * Light of the patches: the chosen year first, then all the years. What is known of a year is kept as long as the site
 * does not change, so that moving the slider asks only for years nobody has looked at.
 */
export function createPatchOutlook(runner: JobRunner): {
  passes(state: AppState, ground: Grid): readonly Pass<readonly PatchOutlook[]>[];
} {
  let world: Key = [];
  let known: Map<number, PatchLight>[] = [];
  let followed: DarkTurn[] | null = null;

  return {
    passes(state, ground) {
      const now = [...shown(state), state.document.site, ground, state.layer];
      if (!sameKey(world, now)) {
        world = now;
        known = [];
        followed = null;
      }
      const patches = patchesOf(state, MOST_CELLS);
      const watched = patches.map(watchedPatch);
      const builtAt = (year: number) => lightScene(state.document, sceneOptions(state, ground, year));
      const sceneAt = (year: number) => builtAt(year).scene;
      const remember = (found: readonly { readonly byYear: ReadonlyMap<number, PatchLight> }[]) =>
        found.forEach(({ byYear }, index) => {
          known[index] ??= new Map();
          for (const [year, light] of byYear) known[index].set(year, light);
        });
      const answer = () =>
        patches.map((patch, index) => outlookOf(patch, state.year, known[index], followed?.[index]));
      const chosenYear: Pass<readonly PatchOutlook[]> = async (signal, onProgress) => {
        if (known.length !== patches.length || known.some((years) => !years.has(state.year)))
          remember(await runOutlook(runner, watched, [state.year], sceneAt, { signal, onProgress }));
        return answer();
      };
      const allYears: Pass<readonly PatchOutlook[]> = async (signal, onProgress) => {
        if (followed === null) {
          const found = await runOutlook(runner, watched, YEARS_LOOKED_AT, sceneAt, { signal, onProgress });
          remember(found);
          followed = await runDarkeners(runner, patches, found, builtAt, { signal });
        }
        return answer();
      };
      return followed === null ? [chosenYear, allYears] : [chosenYear];
    },
  };
}

/** The patches of the taken field, or of all fields while none is taken, each on a grid of at most so many cells. */
export function patchesOf(state: AppState, mostCells: number): PatchMask[] {
  const taken = takenField(state.document);
  return patchMasks(state.document, {
    frame: state.frame,
    layout: state.layout,
    fields: taken ? [taken] : fieldsOf(state.document),
    readingHeightM: READING_HEIGHT_M[state.layer],
    cellM: FINEST_CELL_M,
    mostCells,
  });
}

const watchedPatch = (patch: PatchMask): WatchedPatch => ({
  grid: patch.grid,
  mask: patch.mask,
  readingHeightM: patch.readingHeightM,
  shareToKeep: patch.shareToKeep,
  areaShare: patch.areaShare,
});

function outlookOf(
  patch: PatchMask,
  year: number,
  known: ReadonlyMap<number, PatchLight>,
  turn: DarkTurn | undefined,
): PatchOutlook {
  const light = known.get(year) as PatchLight;
  return {
    id: patch.id,
    name: patch.name,
    implicit: patch.implicit,
    shareToKeep: patch.shareToKeep,
    areaShareToKeep: patch.areaShare,
    year,
    meanLightShare: light.meanLightShare,
    areaShareWithEnoughLight: light.areaShareWithEnoughLight,
    enoughLight: light.enoughLight,
    years:
      turn === undefined
        ? null
        : {
            ...turn,
            looked: [...known]
              .map(([looked, { meanLightShare, enoughLight }]) => ({
                year: looked,
                meanLightShare,
                enoughLight,
              }))
              .sort((a, b) => a.year - b.year),
          },
  };
}
