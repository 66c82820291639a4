/**
 * First and last sun of the day on every cell: the sun's course over the middle day of each month in even steps of at
 * most five minutes, each step's ray from its middle. The sun counts where half of its beam or more comes through.
 * Where the beam's share passes the half between two steps the moment is found on the straight line between them:
 * something solid is met to half a step, the moving edge of a crown more closely.
 *
 * The sun is its centre without the air's refraction, as in the hours of sun; its upper rim is seen a few minutes
 * earlier and later.
 */
import type { Steps } from '../numeric/steps.ts';
import { cellsWithoutLight } from './building-cells.ts';
import type { FirstLastSun, FirstLastSunRequest } from './first-last-sun-types.ts';
import { EDGE, PLANE_BYTES } from './kernel/assembly/layout.ts';
import { type LoadedTile, loadTile } from './kernel/load.ts';
import {
  ANYWHERE,
  type Around,
  castThings,
  LAYER_ALL,
  type LoadedScene,
  layAround,
  loadScene,
  lookAround,
  PAUSE_MS,
} from './loaded-scene.ts';
import { ALL_ROWS, chosenRows, shadowTile } from './shadow-tile.ts';
import { type SunCourse, sunCourses, sunPlan } from './sun-courses.ts';

/** Share of the beam from which the sun counts. */
const SUN_COUNTS_FROM = 0.5;

export function* computeFirstLastSun({
  scene,
  grid,
  readingHeightM,
  rows = ALL_ROWS,
}: FirstLastSunRequest): Steps<FirstLastSun> {
  const courses = sunCourses(scene);
  const loaded = loadScene(scene, sunPlan(scene, courses));
  yield 0;
  const around = yield* lookAround(scene, grid, readingHeightM);
  const { kernel, z0 } = loaded;
  const losses = kernel.take(PLANE_BYTES);
  const allRows = chosenRows(grid, rows);
  const cells = allRows * grid.columns;
  const result: FirstLastSun = {
    grid,
    firstMin: new Float32Array(courses.length * cells).fill(Number.NaN),
    lastMin: new Float32Array(courses.length * cells).fill(Number.NaN),
    sunHours: new Float32Array(courses.length * cells).fill(Number.NaN),
    days: courses.map(({ day }) => day),
  };
  let at: LoadedTile | undefined;
  let done = 0;
  let pausedAt = performance.now();
  for (let row0 = 0; row0 < allRows; row0 += EDGE)
    for (let column0 = 0; column0 < grid.columns; column0 += EDGE) {
      const tile = shadowTile(grid, rows, column0, row0, scene.ground, readingHeightM);
      at = loadTile(kernel, tile, 0, z0, at);
      const hidden = cellsWithoutLight(tile, scene.prisms);
      const here = tile.columns * tile.rows;
      let firstRay = 0;
      for (let month = 0; month < courses.length; month++) {
        const course = courses[month];
        const day = tileDay(tile.stride * tile.rows);
        for (let step = 0; step < course.directions.length; step++) {
          takeStep(loaded, at, around, firstRay + step, losses, course, step, day);
          if (performance.now() - pausedAt < PAUSE_MS) continue;
          yield (done + (here * (firstRay + step)) / loaded.rays.length) / cells;
          pausedAt = performance.now();
        }
        endDay(course, day);
        firstRay += course.directions.length;
        for (let r = 0; r < tile.rows; r++)
          for (let c = 0; c < tile.columns; c++) {
            const i = r * tile.stride + c;
            if (hidden[i]) continue;
            const to = month * cells + (row0 + r) * grid.columns + column0 + c;
            result.firstMin[to] = day.firstMin[i];
            result.lastMin[to] = day.lastMin[i];
            result.sunHours[to] = day.sunMin[i] / 60;
          }
      }
      done += here;
    }
  return result;
}

/** One day on the cells of a tile, as far as it has been followed. */
interface TileDay {
  /** Share of the beam at the last step; at night 0. */
  readonly share: Float32Array;
  readonly firstMin: Float32Array;
  readonly lastMin: Float32Array;
  /** Since when the sun has counted; NaN while it does not. */
  readonly sinceMin: Float32Array;
  readonly sunMin: Float32Array;
}

const tileDay = (cells: number): TileDay => ({
  share: new Float32Array(cells),
  firstMin: new Float32Array(cells).fill(Number.NaN),
  lastMin: new Float32Array(cells).fill(Number.NaN),
  sinceMin: new Float32Array(cells).fill(Number.NaN),
  sunMin: new Float32Array(cells),
});

/** Casts one ray over a tile and carries the day on by it. */
function takeStep(
  loaded: LoadedScene,
  at: LoadedTile,
  around: Around,
  rayIndex: number,
  lossesAt: number,
  course: SunCourse,
  step: number,
  day: TileDay,
): void {
  const { kernel, rays, things } = loaded;
  const ray = rays[rayIndex];
  layAround(loaded, at, ray, around, -1, ANYWHERE);
  castThings(loaded, things, at, ray, LAYER_ALL);
  const touched = kernel.anyTouched();
  if (touched) {
    kernel.lossesOf(at.address, 0, lossesAt);
    kernel.wipe(at.address, ray.address);
  }
  const losses = touched ? kernel.floats.subarray(lossesAt / 4, lossesAt / 4 + day.share.length) : null;
  const { stepMin } = course.day;
  const nowMin = course.riseMin + (step + 0.5) * stepMin;
  for (let i = 0; i < day.share.length; i++) {
    const share = losses === null ? 1 : 1 - losses[i];
    const before = day.share[i];
    day.share[i] = share;
    if (share >= SUN_COUNTS_FROM === before >= SUN_COUNTS_FROM) continue;
    // Before the first step it is night, and sunrise is the moment.
    const atMin =
      step === 0
        ? course.riseMin
        : nowMin - stepMin + ((SUN_COUNTS_FROM - before) / (share - before)) * stepMin;
    if (share >= SUN_COUNTS_FROM) {
      if (Number.isNaN(day.firstMin[i])) day.firstMin[i] = atMin;
      day.sinceMin[i] = atMin;
    } else endSpell(day, i, atMin);
  }
}

function endSpell(day: TileDay, cell: number, atMin: number): void {
  day.lastMin[cell] = atMin;
  day.sunMin[cell] += atMin - day.sinceMin[cell];
  day.sinceMin[cell] = Number.NaN;
}

/** The sun sets where it still shines. */
function endDay({ riseMin, day: { stepMin }, directions }: SunCourse, day: TileDay): void {
  const setMin = riseMin + directions.length * stepMin;
  for (let i = 0; i < day.share.length; i++) if (!Number.isNaN(day.sinceMin[i])) endSpell(day, i, setMin);
}
