import type { Grid } from '../numeric/grid.ts';
import { woodsBeside } from '../scene/site-surface.ts';
import type { AppState } from './model.ts';
import { sceneOptions } from './scene-options.ts';

let last: { readonly of: readonly unknown[]; readonly woods: Grid | null } | null = null;

/** Metres of foliage that the surface file shows where nothing is drawn; null without one. The same grid until it changes. */
export function woodsAround(state: AppState): Grid | null {
  const { document, ground, surface, terrain, frame, year, layout } = state;
  if (!ground || !surface) return null;
  const of = [document, ground, surface, terrain, frame, year, layout];
  if (!last?.of.every((each, k) => each === of[k]))
    last = { of, woods: woodsBeside(document, sceneOptions(state, ground)) };
  return last.woods;
}
