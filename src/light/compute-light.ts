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
import type { Steps } from '../numeric/steps.ts';
import { cellsWithoutLight } from './building-cells.ts';
import { EDGE } from './kernel/assembly/layout.ts';
import { type LoadedTile, loadTile } from './kernel/load.ts';
import { type Fineness, lightPlan, SKY_SLOTS, USUAL } from './light-plan.ts';
import type { LightOnGridsRequest, LightRequest, LightResult } from './light-types.ts';
import { addYear, type LoadedScene, loadScene, lookAround } from './loaded-scene.ts';
import { ALL_ROWS, chosenRows, shadowTile } from './shadow-tile.ts';
import { type BandWriter, bandWriter, emptyResult, writeBands } from './write-bands.ts';

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
    let step = steps.next();
    for (; !step.done; step = steps.next()) yield (results.length + step.value) / places.length;
    results.push(step.value);
  }
  return results;
}

function* lightOnGrid(
  loaded: LoadedScene,
  writer: BandWriter,
  { scene, grid, readingHeightM, rows = ALL_ROWS }: LightRequest,
): Steps<LightResult> {
  const { kernel, plan, z0 } = loaded;
  const around = yield* lookAround(scene, grid, readingHeightM);
  const result = emptyResult(plan, grid, rows);
  const allRows = chosenRows(grid, rows);
  let at: LoadedTile | undefined;
  let doneCells = 0;
  for (let row0 = 0; row0 < allRows; row0 += EDGE)
    for (let column0 = 0; column0 < grid.columns; column0 += EDGE) {
      const tile = shadowTile(grid, rows, column0, row0, scene.ground, readingHeightM);
      at = loadTile(kernel, tile, SKY_SLOTS + plan.skyGroups, z0, at);
      const cells = tile.columns * tile.rows;
      const steps = addYear(loaded, at, around);
      for (let step = steps.next(); !step.done; step = steps.next())
        yield (doneCells + cells * step.value) / (allRows * grid.columns);
      writeBands(kernel, writer, at, result, row0, column0, cellsWithoutLight(tile, scene.prisms));
      doneCells += cells;
    }
  return result;
}
