/**
 * The horizon from one spot: what stands around it, unrolled in compass order, the sun's paths, and the hours of sun
 * that each thing takes. One point needs no tricks: every ray is followed through every piece by its exact path
 * (crowns/path-length.ts, crowns/prism-path.ts), in every five minutes of the year.
 */
import { type Grid, sampleGrid } from '../numeric/grid.ts';
import type { Steps } from '../numeric/steps.ts';
import { MIDDLE_DAY, sunPaths } from '../sun/sun-paths.ts';
import { yearSamples } from '../sun/year-samples.ts';
import { radToDeg } from '../units/angle.ts';
import { BadInputError } from '../units/bad-input.ts';
import type { LightScene } from './light-types.ts';
import { viewHours } from './view-from-hours.ts';
import { landInView } from './view-from-land.ts';
import { gridAzimuthsOf, piecesByColumn, type ViewCells, viewPicture } from './view-from-picture.ts';
import { seenPieces } from './view-from-pieces.ts';
import type { ViewFrom, ViewFromRequest } from './view-from-types.ts';
import { seenWoods } from './view-from-woods.ts';

/** Half a degree: a man's breadth at fifty metres. */
const STEP_DEG = 0.5;
/** Shares of the work, for the progress: the year's sun, the picture, the hours. */
const SUN_SHARE = 0.3;
const PICTURE_SHARE = 0.4;

/** @throws BadInputError when the ground is not known at the spot, or something solid stands on it. */
export function* computeViewFrom(request: ViewFromRequest): Steps<ViewFrom> {
  const { scene, xM, yM, readingHeightM, thingCount, month } = request;
  const groundM = groundAt(scene.ground, xM, yM);
  if (Number.isNaN(groundM))
    throw new BadInputError(
      'The height of the ground is not known at this spot, so no horizon can be drawn from it; expected a spot on the terrain.',
    );
  const eye = { xM, yM, zM: groundM + readingHeightM };
  const woods = seenWoods(scene, eye, thingCount);
  const pieces = [...seenPieces(scene, eye), ...(woods ? [woods] : [])];
  if (pieces.some((piece) => piece.solid && piece.pathM(0, 0, 1) > 0))
    throw new BadInputError('A building or a wall stands on this spot; expected a spot outside.');

  yield 0;
  const samples = yearSamples(scene.calendarYear, scene.timeZone, scene.latDeg, scene.lonDeg, scene.sky);
  const cells: ViewCells = {
    stepDeg: STEP_DEG,
    columns: 360 / STEP_DEG,
    rows: 90 / STEP_DEG,
    convergenceRad: scene.convergenceRad,
  };
  yield SUN_SHARE;
  const land = landInView(scene.ground, eye, gridAzimuthsOf(cells));
  const byColumn = piecesByColumn(cells, pieces);
  const picture = yield* within(
    viewPicture(cells, pieces, byColumn, land, leafShareOf(scene, samples.civil.monthOfDay, month)),
    SUN_SHARE,
    PICTURE_SHARE,
  );
  const before = SUN_SHARE + PICTURE_SHARE;
  const hours = yield* within(
    viewHours(scene, samples, cells, byColumn, land, scene.surroundings ? thingCount + 1 : thingCount),
    before,
    1 - before,
  );
  return {
    xM,
    yM,
    readingHeightM,
    groundM,
    month,
    stepDeg: STEP_DEG,
    columns: cells.columns,
    rows: cells.rows,
    letThrough: picture.letThrough,
    landAltitudeDeg: Float32Array.from(land.tangent, (tangent) => radToDeg(Math.atan(tangent))),
    outlines: picture.outlines,
    hours,
    sunPaths: sunPaths(scene.calendarYear, scene.timeZone, scene.latDeg, scene.lonDeg, month),
  };
}

/** Elevation of the ground, NaN where it is not known or off the raster. */
function groundAt(ground: Grid, xM: number, yM: number): number {
  const { columns, rows, cellM, westM, northM } = ground;
  const within = xM >= westM && xM <= westM + columns * cellM && yM <= northM && yM >= northM - rows * cellM;
  return within ? sampleGrid(ground, xM, yM) : Number.NaN;
}

/** Leaf share by class on the middle day of a month. */
function leafShareOf({ leaf }: LightScene, monthOfDay: Uint8Array, month: number): Float32Array {
  const day = monthOfDay.indexOf(month) + MIDDLE_DAY - 1;
  const first = leaf.phaseOfDay[day] * leaf.classCount;
  return leaf.leafShare.subarray(first, first + leaf.classCount);
}

/** A part's progress as a share of the whole. */
function* within<Result>(
  part: Generator<number, Result, void>,
  from: number,
  share: number,
): Generator<number, Result, void> {
  for (;;) {
    const step = part.next();
    if (step.done) return step.value;
    yield from + step.value * share;
  }
}
