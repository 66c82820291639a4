/**
 * What each tree, belt or building costs: the light that would come back on the counted cells if it alone were gone,
 * over the growing season. For every ray the transmittance without the thing less that with it. Two trees that stand
 * behind one another cost less together than the sum of both, so the costs of all things do not add up to the shade.
 */
import { cellCount, type GridSpec } from '../numeric/grid.ts';
import type { Steps } from '../numeric/steps.ts';
import { lossOfDepth } from './beer-table.ts';
import { buildingPrisms, cellsInBuildings } from './building-cells.ts';
import { prismCaster } from './cast-prism.ts';
import {
  addCrown,
  addPrism,
  clearWorkbench,
  type Foliage,
  type Workbench,
  workbench,
} from './depth-layers.ts';
import { groundPyramid, markBehindLand, tileHorizons } from './horizon.ts';
import { lightPlan, type PlannedDirection } from './light-plan.ts';
import type { LightCostRequest, LightCostResult } from './light-types.ts';
import { type ShadowTile, shadowTile, TILE_EDGE } from './shadow-tile.ts';

const PAUSE_MS = 12;
/** More counted cells than this are thinned out evenly: the answer is a mean. */
const MOST_CELLS = 6000;

/** The pieces a thing is made of. */
interface ThingParts {
  readonly thing: number;
  readonly crowns: number[];
  readonly prisms: number[];
}

export function* computeLightCost(request: LightCostRequest): Steps<LightCostResult> {
  const { scene, readingHeightM, thingCount } = request;
  if (request.mask.length !== cellCount(request.grid))
    throw new Error(`The mask has ${request.mask.length} values; expected ${cellCount(request.grid)}.`);
  const { grid, mask } = thinned(request.grid, request.mask);
  const plan = lightPlan(scene);
  yield 0;
  const pyramid = groundPyramid(scene.ground);
  const foliage: Foliage = {
    crowns: scene.crowns,
    caster: prismCaster(scene.prisms),
    classCount: plan.classCount,
  };
  const things = partsOfThings(request);
  const buildings = buildingPrisms(scene.prisms);
  const hours = new Float64Array(thingCount);
  const mol = new Float64Array(thingCount);
  const mostStates = Math.max(plan.skyGroups, ...plan.sun.map((direction) => direction.states));
  const whole = workbench(mostStates);
  const single = workbench(mostStates);
  const solidThings = new Uint16Array(TILE_EDGE * TILE_EDGE);
  const counted = new Uint8Array(TILE_EDGE * TILE_EDGE);
  let countedCells = 0;
  let doneCells = 0;
  let pausedAt = performance.now();

  for (let row0 = 0; row0 < grid.rows; row0 += TILE_EDGE)
    for (let column0 = 0; column0 < grid.columns; column0 += TILE_EDGE) {
      const tile = shadowTile(grid, column0, row0, scene.ground, readingHeightM);
      const hidden = cellsInBuildings(tile, scene.prisms, buildings);
      let here = 0;
      for (let i = 0; i < tile.cells; i++) {
        const r = Math.floor(i / tile.columns);
        const cell = (row0 + r) * grid.columns + column0 + (i - r * tile.columns);
        counted[i] = mask[cell] && !hidden[i] && !Number.isNaN(tile.readingZM[i]) ? 1 : 0;
        here += counted[i];
      }
      if (here > 0) {
        countedCells += here;
        const horizons = tileHorizons(tile, pyramid, readingHeightM);
        const directions = plan.sun.length + plan.sky.length;
        clearWorkbench(single, tile, mostStates);
        for (let d = 0; d < directions; d++) {
          const direction = d < plan.sun.length ? plan.sun[d] : plan.sky[d - plan.sun.length];
          const behind =
            horizons !== null &&
            markBehindLand(tile, horizons, direction.gridAzimuthRad, direction.ray.tanAltitude, whole.behind);
          layAll(tile, direction, behind);
          for (const parts of things) {
            if (!laySingle(tile, direction, parts)) continue;
            for (let state = 0; state < direction.states; state++) {
              const gain = gainOf(tile, state, direction.states, behind);
              if (gain === 0) continue;
              hours[parts.thing] += gain * direction.growingHours[state];
              mol[parts.thing] += gain * direction.growingMol[state];
            }
            emptyTouched(single, tile, direction.states);
          }
          if (performance.now() - pausedAt < PAUSE_MS) continue;
          yield (doneCells + (tile.cells * d) / directions) / cellCount(grid);
          pausedAt = performance.now();
        }
      }
      doneCells += tile.cells;
    }

  const seasonDays = plan.growingDaysByMonth.reduce((a, b) => a + b, 0);
  const perCell = (sum: number, by: number) => (countedCells > 0 && by > 0 ? sum / countedCells / by : 0);
  return {
    directHoursADay: Float32Array.from(hours, (sum) => perCell(sum, seasonDays)),
    lightShare: Float32Array.from(mol, (sum) => perCell(sum, plan.openMol[12])),
  };

  /** Everything's depth into `whole`, and how many things block each cell outright. */
  function layAll(tile: ShadowTile, direction: PlannedDirection, behind: boolean): void {
    clearWorkbench(whole, tile, direction.states);
    solidThings.fill(0, 0, tile.cells);
    if (!behind) whole.behind.fill(0, 0, tile.cells);
    for (const parts of things) {
      for (const i of parts.crowns) addCrown(whole, tile, foliage, i, direction);
      whole.solid.fill(0, 0, tile.cells);
      let blocks = false;
      for (const i of parts.prisms) {
        const reached = addPrism(whole, tile, foliage, i, direction);
        if (reached && scene.prisms.solid[i]) blocks = true;
      }
      if (blocks) for (let i = 0; i < tile.cells; i++) solidThings[i] += whole.solid[i];
    }
  }

  function laySingle(tile: ShadowTile, direction: PlannedDirection, parts: ThingParts): boolean {
    let touched = false;
    for (const i of parts.crowns) if (addCrown(single, tile, foliage, i, direction)) touched = true;
    for (const i of parts.prisms) if (addPrism(single, tile, foliage, i, direction)) touched = true;
    return touched;
  }

  /** Sum over the counted cells of transmittance without the thing in `single`, less with it. */
  function gainOf(tile: ShadowTile, state: number, states: number, behind: boolean): number {
    const all = whole.depth;
    const own = single.depth;
    let gain = 0;
    for (let r = 0; r < tile.rows; r++) {
      const end = r * tile.columns + single.touchedEnd[r];
      for (let i = r * tile.columns + single.touchedFirst[r]; i < end; i++) {
        if (!counted[i] || (behind && whole.behind[i])) continue;
        const ownSolid = single.solid[i];
        const ownDepth = own[i * states + state];
        if (ownDepth === 0 && !ownSolid) continue;
        if (solidThings[i] - ownSolid > 0) continue;
        const depth = all[i * states + state];
        const without = 1 - lossOfDepth(Math.max(0, depth - ownDepth));
        gain += ownSolid ? without : without - 1 + lossOfDepth(depth);
      }
    }
    return gain;
  }

  function partsOfThings({ scene: { crowns, prisms } }: LightCostRequest): ThingParts[] {
    const parts = Array.from(
      { length: thingCount },
      (_, thing): ThingParts => ({
        thing,
        crowns: [],
        prisms: [],
      }),
    );
    for (let i = 0; i < crowns.count; i++) parts[crowns.thing[i]].crowns.push(i);
    for (let i = 0; i < prisms.count; i++) parts[prisms.thing[i]].prisms.push(i);
    return parts.filter((p) => p.crowns.length + p.prisms.length > 0);
  }
}

function emptyTouched(bench: Workbench, tile: ShadowTile, states: number): void {
  for (let r = 0; r < tile.rows; r++) {
    const from = r * tile.columns + bench.touchedFirst[r];
    const to = r * tile.columns + bench.touchedEnd[r];
    if (from >= to) continue;
    bench.depth.fill(0, from * states, to * states);
    bench.solid.fill(0, from, to);
  }
  bench.touchedFirst.fill(tile.columns, 0, tile.rows);
  bench.touchedEnd.fill(0, 0, tile.rows);
}

/** A coarser grid and its mask, so that about MOST_CELLS count; cell centres stay on cells that count. */
function thinned(grid: GridSpec, mask: Uint8Array): { grid: GridSpec; mask: Uint8Array } {
  let counted = 0;
  for (const m of mask) if (m) counted++;
  const stride = Math.ceil(Math.sqrt(counted / MOST_CELLS));
  if (stride <= 1) return { grid, mask };
  const columns = Math.ceil(grid.columns / stride);
  const rows = Math.ceil(grid.rows / stride);
  const coarse = new Uint8Array(columns * rows);
  const middle = Math.floor(stride / 2);
  for (let r = 0; r < rows; r++)
    for (let c = 0; c < columns; c++) {
      const row = Math.min(grid.rows - 1, r * stride + middle);
      const column = Math.min(grid.columns - 1, c * stride + middle);
      coarse[r * columns + c] = mask[row * grid.columns + column];
    }
  const cellM = grid.cellM * stride;
  // Shifted so that a coarse centre is the centre of the fine cell whose mask it takes.
  const shiftM = (middle + 0.5) * grid.cellM - cellM / 2;
  return {
    grid: { columns, rows, cellM, westM: grid.westM + shiftM, northM: grid.northM - shiftM },
    mask: coarse,
  };
}
