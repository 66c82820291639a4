/**
 * The light engine: a year's direct hours, share of open light and daily light integral for every cell of a grid.
 *
 * Beam transmittance along a ray is exp(-sum of depth per metre * path) over all the foliage it crosses and 0 where
 * anything solid or the land stands in the way. Rays start at the ground plus the reading height. Every direction's
 * losses are taken from the totals on open level ground. Cells are worked in tiles; what a cell gets does not depend
 * on the grid it is computed in, so a grid may be split by rows over several workers and put together again.
 */
import { cellCount } from '../numeric/grid.ts';
import type { Steps } from '../numeric/steps.ts';
import {
  QUADRATURE_STEPS,
  type QuadratureSteps,
  WEIGHT_BEAM_GROWING,
  WEIGHT_BEAM_RESTING,
  WEIGHT_HOURS,
} from '../sun/year-quadrature.ts';
import { accumulateLosses } from './accumulate-losses.ts';
import { buildingPrisms, cellsInBuildings } from './building-cells.ts';
import { prismCaster } from './cast-prism.ts';
import { type Foliage, workbench } from './depth-layers.ts';
import { type GroundPyramid, groundPyramid, tileHorizons } from './horizon.ts';
import { type LightPlan, lightPlan, SUN_SLOTS } from './light-plan.ts';
import type { LightOnGridsRequest, LightRequest, LightResult, LightScene } from './light-types.ts';
import { shadowTile, TILE_EDGE } from './shadow-tile.ts';
import { STATED_YEAR_ERROR } from './stated-error.ts';

const PAUSE_MS = 12;

/** What one scene needs on any grid. */
interface PreparedScene {
  readonly plan: LightPlan;
  readonly pyramid: GroundPyramid;
  readonly foliage: Foliage;
  /** Indices of the prisms that are buildings. */
  readonly buildings: readonly number[];
}

function prepare(scene: LightScene, steps: QuadratureSteps): PreparedScene {
  const plan = lightPlan(scene, steps);
  return {
    plan,
    pyramid: groundPyramid(scene.ground),
    foliage: { crowns: scene.crowns, caster: prismCaster(scene.prisms), classCount: plan.classCount },
    buildings: buildingPrisms(scene.prisms),
  };
}

/** @param steps fineness of the year's sun directions; the stated error holds for the usual one. */
export function* computeLight(
  request: LightRequest,
  steps: QuadratureSteps = QUADRATURE_STEPS,
): Steps<LightResult> {
  const prepared = prepare(request.scene, steps);
  yield 0;
  return yield* lightOnGrid(prepared, request);
}

/** Light on several small grids of one scene, in their order: the year is prepared once. */
export function* computeLightOnGrids({ scene, places }: LightOnGridsRequest): Steps<LightResult[]> {
  const prepared = prepare(scene, QUADRATURE_STEPS);
  yield 0;
  const results: LightResult[] = [];
  for (const place of places) {
    const steps = lightOnGrid(prepared, { scene, ...place });
    let step = steps.next();
    for (; !step.done; step = steps.next()) yield (results.length + step.value) / places.length;
    results.push(step.value);
  }
  return results;
}

function* lightOnGrid(prepared: PreparedScene, request: LightRequest): Steps<LightResult> {
  const { scene, grid, readingHeightM } = request;
  const { plan, pyramid, foliage, buildings } = prepared;
  const cells = cellCount(grid);
  const result = emptyResult(request, plan, cells);
  const bench = workbench(Math.max(plan.skyGroups, ...plan.sun.map((direction) => direction.states)));
  const tileCells = TILE_EDGE * TILE_EDGE;
  const bands = (count: number) => Array.from({ length: count }, () => new Float32Array(tileCells));
  const sunLosses = bands(SUN_SLOTS);
  const landLosses = bands(12);
  const skyLosses = bands(plan.skyGroups);

  let doneCells = 0;
  let pausedAt = performance.now();
  for (let row0 = 0; row0 < grid.rows; row0 += TILE_EDGE)
    for (let column0 = 0; column0 < grid.columns; column0 += TILE_EDGE) {
      const tile = shadowTile(grid, column0, row0, scene.ground, readingHeightM);
      const horizons = tileHorizons(tile, pyramid, readingHeightM);
      for (const sums of [sunLosses, landLosses, skyLosses]) for (const sum of sums) sum.fill(0);
      const directions = plan.sun.length + plan.sky.length;
      for (let d = 0; d < directions; d++) {
        if (d < plan.sun.length)
          accumulateLosses(tile, foliage, horizons, plan.sun[d], sunLosses, landLosses, bench);
        else accumulateLosses(tile, foliage, horizons, plan.sky[d - plan.sun.length], skyLosses, null, bench);
        if (performance.now() - pausedAt < PAUSE_MS) continue;
        yield (doneCells + (tile.cells * d) / directions) / cells;
        pausedAt = performance.now();
      }
      const hidden = cellsInBuildings(tile, scene.prisms, buildings);
      for (let i = 0; i < tile.cells; i++) {
        const r = Math.floor(i / tile.columns);
        const cell = (row0 + r) * grid.columns + column0 + (i - r * tile.columns);
        const missing = hidden[i] === 1 || Number.isNaN(tile.readingZM[i]);
        writeCell(result, plan, cell, cells, i, missing, sunLosses, landLosses, skyLosses);
      }
      doneCells += tile.cells;
    }
  return result;
}

function emptyResult(request: LightRequest, plan: LightPlan, cells: number): LightResult {
  return {
    grid: request.grid,
    directHours: new Float32Array(12 * cells),
    openHours: new Float32Array(12 * cells),
    lightShare: new Float32Array(13 * cells),
    dailyLightIntegral: new Float32Array(12 * cells),
    openDailyLightIntegral: Float32Array.from(plan.daysInMonth, (days, month) => plan.openMol[month] / days),
    growingDaysByMonth: plan.growingDaysByMonth,
    directions: plan.sun.length,
    quadratureError: STATED_YEAR_ERROR,
  };
}

/** Turns the losses of cell i of a tile into the results of a cell of the grid. */
function writeCell(
  result: LightResult,
  plan: LightPlan,
  cell: number,
  cells: number,
  i: number,
  missing: boolean,
  sunLosses: readonly Float32Array[],
  landLosses: readonly Float32Array[],
  skyLosses: readonly Float32Array[],
): void {
  let growingLostMol = 0;
  for (let period = 0; period < 13; period++) {
    const at = period * cells + cell;
    if (missing) {
      result.lightShare[at] = Number.NaN;
      if (period === 12) continue;
      result.directHours[at] = Number.NaN;
      result.openHours[at] = Number.NaN;
      result.dailyLightIntegral[at] = Number.NaN;
      continue;
    }
    let lostMol = 0;
    if (period < 12) {
      const growing = sunLosses[WEIGHT_BEAM_GROWING + period][i];
      growingLostMol += growing;
      lostMol = growing + sunLosses[WEIGHT_BEAM_RESTING + period][i];
    } else lostMol = growingLostMol;
    for (let g = 0; g < plan.skyGroups; g++)
      lostMol += plan.diffuseMol[period * plan.skyGroups + g] * skyLosses[g][i];
    // A month of polar night has no light to share: what the sky would leave stands in.
    const openMol = plan.openMol[period];
    const share = openMol > 0 ? Math.min(1, Math.max(0, 1 - lostMol / openMol)) : 1 - skyLosses[0][i];
    result.lightShare[at] = share;
    if (period === 12) continue;
    const open = plan.sunTotal[WEIGHT_HOURS + period];
    result.openHours[at] = Math.max(0, open - landLosses[WEIGHT_HOURS + period][i]);
    result.directHours[at] = Math.max(0, open - sunLosses[WEIGHT_HOURS + period][i]);
    result.dailyLightIntegral[at] = share * result.openDailyLightIntegral[period];
  }
}
