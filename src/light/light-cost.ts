/**
 * What each tree, belt or building costs: the light that would come back on the counted cells if it alone were gone,
 * over the growing season. For every ray the transmittance without the thing less that with it. Two trees that stand
 * behind one another cost less together than the sum of both, so the costs of all things do not add up to the shade.
 */
import { cellCount, type GridSpec } from '../numeric/grid.ts';
import type { Steps } from '../numeric/steps.ts';
import { cellsWithoutLight } from './building-cells.ts';
import { EDGE, MOST_STATES, PLANE_BYTES } from './kernel/assembly/layout.ts';
import { type LoadedTile, loadThings, loadTile } from './kernel/load.ts';
import { lightPlan } from './light-plan.ts';
import type { LightCostRequest, LightCostResult, LightScene } from './light-types.ts';
import {
  ANYWHERE,
  castThings,
  LAYER_ALL,
  LAYER_OWN,
  type LoadedScene,
  layAround,
  loadScene,
  lookAround,
  PAUSE_MS,
} from './loaded-scene.ts';
import { ALL_ROWS, shadowTile } from './shadow-tile.ts';

/** More counted cells than this are thinned out evenly: the answer is a mean. */
const MOST_CELLS = 6000;

/** The crowns and prisms of one thing, first and end among all that is loaded; they lie thing by thing. */
interface ThingParts {
  readonly thing: number;
  readonly crowns: readonly [first: number, end: number];
  readonly prisms: readonly [first: number, end: number];
}

export function* computeLightCost(request: LightCostRequest): Steps<LightCostResult> {
  const { scene, readingHeightM, thingCount } = request;
  if (request.mask.length !== cellCount(request.grid))
    throw new Error(`The mask has ${request.mask.length} values; expected ${cellCount(request.grid)}.`);
  const { grid, mask } = thinned(request.grid, request.mask);
  const plan = lightPlan(scene);
  yield 0;
  const loaded = loadScene(scene, plan);
  const { kernel, rays, z0, things } = loaded;
  const parts = loadThingByThing(loaded, scene, thingCount);
  const around = yield* lookAround(scene, grid, readingHeightM);
  const countedAt = kernel.take(PLANE_BYTES);
  const gains = kernel.take(8 * MOST_STATES);
  const hours = new Float64Array(thingCount);
  const mol = new Float64Array(thingCount);
  let at: LoadedTile | undefined;
  let countedCells = 0;
  let doneCells = 0;
  let pausedAt = performance.now();

  for (let row0 = 0; row0 < grid.rows; row0 += EDGE)
    for (let column0 = 0; column0 < grid.columns; column0 += EDGE) {
      const tile = shadowTile(grid, ALL_ROWS, column0, row0, scene.ground, readingHeightM);
      const cells = tile.columns * tile.rows;
      const hidden = cellsWithoutLight(tile, scene.prisms);
      let here = 0;
      kernel.floats.fill(0, countedAt / 4, (countedAt + PLANE_BYTES) / 4);
      for (let r = 0; r < tile.rows; r++)
        for (let c = 0; c < tile.columns; c++) {
          const i = r * tile.stride + c;
          if (hidden[i] || !mask[(row0 + r) * grid.columns + column0 + c]) continue;
          kernel.floats[countedAt / 4 + i] = 1;
          here++;
        }
      if (here > 0) {
        countedCells += here;
        at = loadTile(kernel, tile, 0, z0, at);
        for (let k = 0; k < rays.length; k++) {
          const ray = rays[k];
          layAround(loaded, at, ray, around, -1, ANYWHERE);
          castThings(loaded, things, at, ray, LAYER_ALL);
          // From here on what is touched is the single thing's.
          kernel.empty(EDGE);
          for (const one of parts) {
            const { crowns, prisms } = one;
            castThings(loaded, things, at, ray, LAYER_OWN, ...crowns);
            castThings(loaded, things, at, ray, LAYER_OWN, ...prisms);
            if (!kernel.anyTouched()) continue;
            kernel.doubles.fill(0, gains / 8, gains / 8 + ray.states);
            kernel.sumGains(at.address, ray.address, countedAt, gains);
            for (let s = 0; s < ray.states; s++) {
              const gain = kernel.doubles[gains / 8 + s];
              hours[one.thing] += gain * ray.direction.growingHours[ray.firstState + s];
              mol[one.thing] += gain * ray.direction.growingMol[ray.firstState + s];
            }
          }
          kernel.wipe(at.address, ray.address);
          if (performance.now() - pausedAt < PAUSE_MS) continue;
          yield (doneCells + (cells * k) / rays.length) / cellCount(grid);
          pausedAt = performance.now();
        }
      }
      doneCells += cells;
    }

  const seasonDays = plan.growingDaysByMonth.reduce((a, b) => a + b, 0);
  const perCell = (sum: number, by: number) => (countedCells > 0 && by > 0 ? sum / countedCells / by : 0);
  return {
    directHoursADay: Float32Array.from(hours, (sum) => perCell(sum, seasonDays)),
    lightShare: Float32Array.from(mol, (sum) => perCell(sum, plan.openMol[12])),
  };
}

/** Loads the scene's things anew so that each thing's pieces lie together. */
function loadThingByThing(
  loaded: LoadedScene,
  { crowns, prisms }: LightScene,
  thingCount: number,
): ThingParts[] {
  const inOrder = (of: Uint16Array, count: number) =>
    Array.from({ length: count }, (_, i) => i).sort((a, b) => of[a] - of[b] || a - b);
  const chosen = { crowns: inOrder(crowns.thing, crowns.count), prisms: inOrder(prisms.thing, prisms.count) };
  loadThings(loaded.kernel, loaded.things, crowns, prisms, chosen, loaded.z0);
  const parts: ThingParts[] = [];
  let firstCrown = 0;
  let firstPrism = 0;
  for (let thing = 0; thing < thingCount; thing++) {
    let crownEnd = firstCrown;
    while (crownEnd < crowns.count && crowns.thing[chosen.crowns[crownEnd]] === thing) crownEnd++;
    let prismEnd = firstPrism;
    while (prismEnd < prisms.count && prisms.thing[chosen.prisms[prismEnd]] === thing) prismEnd++;
    if (crownEnd > firstCrown || prismEnd > firstPrism)
      parts.push({
        thing,
        crowns: [firstCrown, crownEnd],
        prisms: [crowns.count + firstPrism, crowns.count + prismEnd],
      });
    firstCrown = crownEnd;
    firstPrism = prismEnd;
  }
  return parts;
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
