/**
 * What each thing takes of the sun at a spot: every five minutes of the year the ray to the sun's centre is followed
 * through every piece with its exact path, the leaves as on that day.
 */
import type { YearSamples } from '../sun/year-samples.ts';
import { radToDeg } from '../units/angle.ts';
import type { LightScene } from './light-types.ts';
import type { LandInView } from './view-from-land.ts';
import type { ViewCells } from './view-from-picture.ts';
import type { SeenPiece } from './view-from-pieces.ts';
import { VIEW_PERIODS, VIEW_SEASON, type ViewHours } from './view-from-types.ts';

/** Moments between two pauses. */
const MOMENTS_A_PAUSE = 2000;

export function* viewHours(
  scene: LightScene,
  samples: YearSamples,
  cells: ViewCells,
  byColumn: readonly SeenPiece[][],
  land: LandInView,
  thingCount: number,
): Generator<number, ViewHours, void> {
  const { leaf, growingDay, convergenceRad } = scene;
  const { columns, stepDeg } = cells;
  const open = new Float64Array(VIEW_PERIODS);
  const aboveLand = new Float64Array(VIEW_PERIODS);
  const got = new Float64Array(VIEW_PERIODS);
  const toLand = new Float64Array(VIEW_PERIODS);
  const toThings = new Float64Array(thingCount * VIEW_PERIODS);
  // Of the ray at hand: the things it meets, the depth of each, and whether each stops it.
  const met: number[] = [];
  const depth = new Float64Array(thingCount);
  const stops = new Uint8Array(thingCount);

  for (let i = 0; i < samples.count; i++) {
    if (i % MOMENTS_A_PAUSE === 0) yield i / samples.count;
    const hours = samples.hours[i];
    if (hours === 0) continue;
    const day = samples.day[i];
    const month = samples.civil.monthOfDay[day];
    const growing = growingDay[day] === 1;
    add(open, hours);
    const altitude = samples.altitudeRad[i];
    const azimuthDeg = ((radToDeg(samples.azimuthRad[i]) % 360) + 360) % 360;
    const behindLand = landTangentAt(azimuthDeg / stepDeg) > Math.tan(altitude);
    if (!behindLand) add(aboveLand, hours);

    const column = Math.min(columns - 1, Math.floor(azimuthDeg / stepDeg));
    const solids = follow(byColumn[column], altitude, samples.azimuthRad[i] - convergenceRad, day);
    let sum = 0;
    for (const thing of met) sum += depth[thing];
    const through = solids === 0 ? Math.exp(-sum) : 0;
    if (behindLand) add(toLand, hours * through);
    else {
      add(got, hours * through);
      for (const thing of met) {
        if (solids - stops[thing] > 0) continue;
        const back = hours * (Math.exp(depth[thing] - sum) - through);
        toThings[thing * VIEW_PERIODS + month] += back;
        if (growing) toThings[thing * VIEW_PERIODS + VIEW_SEASON] += back;
      }
    }
    for (const thing of met) {
      depth[thing] = 0;
      stops[thing] = 0;
    }

    function add(periods: Float64Array, value: number): void {
      periods[month] += value;
      if (growing) periods[VIEW_SEASON] += value;
    }
  }

  const shared = open.map((hours, period) => {
    let alone = 0;
    for (let thing = 0; thing < thingCount; thing++) alone += toThings[thing * VIEW_PERIODS + period];
    // Less than nothing only by rounding.
    return Math.max(0, hours - got[period] - toLand[period] - alone);
  });
  return {
    open: Float32Array.from(open),
    aboveLand: Float32Array.from(aboveLand),
    got: Float32Array.from(got),
    toLand: Float32Array.from(toLand),
    toThings: Float32Array.from(toThings),
    shared: Float32Array.from(shared),
  };

  /** Fills `met`, `depth` and `stops` for a ray. @returns how many things stop it. */
  function follow(
    candidates: readonly SeenPiece[],
    altitudeRad: number,
    gridAzimuthRad: number,
    day: number,
  ): number {
    const cos = Math.cos(altitudeRad);
    const ux = Math.sin(gridAzimuthRad) * cos;
    const uy = Math.cos(gridAzimuthRad) * cos;
    const uz = Math.sin(altitudeRad);
    const phase = leaf.phaseOfDay[day] * leaf.classCount;
    let solids = 0;
    met.length = 0;
    for (const piece of candidates) {
      const pathM = piece.pathM(ux, uy, uz);
      if (pathM === 0) continue;
      const { thing } = piece;
      if (!met.includes(thing)) met.push(thing);
      if (piece.solid) {
        if (!stops[thing]) solids++;
        stops[thing] = 1;
      } else {
        const share = leaf.leafShare[phase + piece.leafClass];
        depth[thing] += pathM * (share * piece.depthOn + (1 - share) * piece.depthOff);
      }
    }
    return solids;
  }

  /** Between the centres of the columns; `along` in columns from north. */
  function landTangentAt(along: number): number {
    const at = along - 0.5;
    const from = Math.floor(at);
    const share = at - from;
    const here = land.tangent[(from + columns) % columns];
    return here + share * (land.tangent[(from + 1) % columns] - here);
  }
}
