/**
 * The light engine: a year's direct hours, share of open light and daily light integral for every cell of a grid.
 *
 * Beam transmittance along a ray is exp(-sum of depth per metre * path) over all the foliage it crosses and 0 where
 * anything solid or the land stands in the way. Rays start at the ground plus the reading height. Every direction's
 * losses are taken from the totals on open level ground. Cells are worked in tiles; what a cell gets does not depend
 * on the grid it is computed in, so a grid may be split by rows over several workers and put together again.
 *
 * Memory: one tile's room (1.5 MB), the things, the horizons, and 49 floats a cell for the result.
 */
import { type Steps, within } from '../numeric/steps.ts';
import { cellsWithoutLight } from './building-cells.ts';
import { EDGE } from './kernel/assembly/layout.ts';
import { type LoadedTile, loadTile } from './kernel/load.ts';
import { type Fineness, lightPlan, SKY_SLOTS, USUAL } from './light-plan.ts';
import type { LightOnGridsRequest, LightRequest, LightResult } from './light-types.ts';
import { addYear, type LoadedScene, loadScene, lookAround } from './loaded-scene.ts';
import { ALL_ROWS, chosenRows, shadowTile } from './shadow-tile.ts';
import { type BandWriter, bandWriter, emptyResult, writeBands } from './write-bands.ts';

/** About this share of the time goes into looking around, before the first tile. */
export const LOOKING_AROUND = 0.1;

/** @param fineness the stated error holds for the usual one. */
export function* computeLight(request: LightRequest, fineness: Fineness = USUAL): Steps<LightResult> {
  const loaded = loadScene(request.scene, lightPlan(request.scene, fineness));
  yield 0;
  return yield* lightOnGrid(loaded, bandWriter(loaded.kernel, loaded.plan), request);
}

/** Light on several small grids of one scene, in their order: the year is prepared once. */
export function* computeLightOnGrids({ scene, places }: LightOnGridsRequest): Steps<LightResult[]> {
  const loaded = loadScene(scene, lightPlan(scene));
  const writer = bandWriter(loaded.kernel, loaded.plan);
  yield 0;
  const results: LightResult[] = [];
  for (const place of places) {
    const steps = lightOnGrid(loaded, writer, { scene, ...place });
    results.push(yield* within(steps, results.length / places.length, 1 / places.length));
  }
  return results;
}

function* lightOnGrid(
  loaded: LoadedScene,
  writer: BandWriter,
  { scene, grid, readingHeightM, rows = ALL_ROWS }: LightRequest,
): Steps<LightResult> {
  const { kernel, plan, z0 } = loaded;
  const around = yield* within(lookAround(scene, grid, readingHeightM), 0, LOOKING_AROUND);
  const result = emptyResult(plan, grid, rows);
  const allRows = chosenRows(grid, rows);
  let at: LoadedTile | undefined;
  let doneCells = 0;
  for (let row0 = 0; row0 < allRows; row0 += EDGE)
    for (let column0 = 0; column0 < grid.columns; column0 += EDGE) {
      const tile = shadowTile(grid, rows, column0, row0, scene.ground, readingHeightM);
      at = loadTile(kernel, tile, SKY_SLOTS + plan.skyGroups, z0, at);
      const cells = tile.columns * tile.rows;
      const perCell = (1 - LOOKING_AROUND) / (allRows * grid.columns);
      yield* within(addYear(loaded, at, around), LOOKING_AROUND + doneCells * perCell, cells * perCell);
      writeBands(kernel, writer, at, result, row0, column0, cellsWithoutLight(tile, scene.prisms));
      doneCells += cells;
    }
  return result;
}
