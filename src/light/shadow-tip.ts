/**
 * Where the tip of a shadow falls on real ground. A tip is where the ray from the middle of the sun, past the highest
 * thing in its way, meets the ground: half of the sun is hidden there. Local frame, x east and y north along the grid;
 * heights and lengths in true metres, positions in the frame's (see `localPerM`).
 */
import type { CrownForm } from '../crowns/crown-set.ts';
import { type Grid, sampleGrid } from '../numeric/grid.ts';
import { degToRad, type GridAzimuthRad } from '../units/angle.ts';

/** The sun as it is seen: its apparent altitude, for light is bent by the air before it casts a shadow. */
export interface ShadowSun {
  /** Apparent altitude of the sun's centre, radians. */
  readonly altitudeRad: number;
  readonly azimuthRad: GridAzimuthRad;
}

export interface Point3 {
  readonly xM: number;
  readonly yM: number;
  /** Elevation above the ground's datum. */
  readonly zM: number;
}

export interface CrownCaster {
  readonly casts: 'crown';
  readonly form: CrownForm;
  readonly xM: number;
  readonly yM: number;
  /** Elevation of the ground at the stem. */
  readonly groundM: number;
  /** Base and top of the crown above that ground. */
  readonly baseM: number;
  readonly topM: number;
  readonly radiusM: number;
}
/** Corners or edge points of a belt, wall or building: the one whose shadow reaches furthest casts the tip. */
export interface PointsCaster {
  readonly casts: 'points';
  readonly points: readonly Point3[];
}
export type ShadowCaster = CrownCaster | PointsCaster;

export interface ShadowTip {
  /** On the ground. */
  readonly at: Point3;
  /** The point of the thing that casts it. */
  readonly cast: Point3;
  /** Level distance from under what stands (the stem, or the casting point) to the tip, true metres. */
  readonly lengthM: number;
  /** Half the width of the half-shade along the shadow, level: half the way from full sun to none. */
  readonly fuzzyM: number;
}

export interface TipOptions {
  readonly ground: Grid;
  /** Metres of the frame a true metre (see gridScaleAt). */
  readonly localPerM: number;
  /** A shadow longer than this, from the casting point, has no tip. */
  readonly longestM: number;
}

/** Mean angular radius of the sun: 959.63 arc seconds at one astronomical unit (IAU value; it varies by 1.7 %). */
export const SUN_RADIUS_RAD = degToRad(959.63 / 3600);

/** Step of the search along a ray, true metres; a finer ground is searched in half cells. */
const STEP_M = 0.5;
const CLOSE_M = 1e-4;

/** Unit vector of the level direction away from the sun. */
export const awayFromSun = (sun: ShadowSun): readonly [number, number] => [
  -Math.sin(sun.azimuthRad),
  -Math.cos(sun.azimuthRad),
];

/**
 * The point past which the last ray goes, in the upright plane through the axis and the sun.
 *
 * The reach of a point is its distance away from the sun plus its height times the cotangent of the sun's altitude;
 * the ray with the largest reach is the last one that is stopped, whatever the ground below looks like. An ellipsoid
 * with semi-axes R and c has it where the ray is tangent, at (R² e, c² cot a) / sqrt(R² + c² cot² a) from its centre,
 * e away from the sun: beyond and below the top. A cylinder has it on the far rim of its top, a cone at the apex, or
 * on the far rim of its base when the sun is steeper than its flank.
 */
function castingPoint(caster: ShadowCaster, sun: ShadowSun, localPerM: number): Point3 {
  const [ex, ey] = awayFromSun(sun);
  const cot = 1 / Math.tan(sun.altitudeRad);
  if (caster.casts === 'points') {
    const reachM = (p: Point3) => (ex * p.xM + ey * p.yM) / localPerM + p.zM * cot;
    return caster.points.reduce((far, p) => (reachM(p) > reachM(far) ? p : far));
  }
  const { xM, yM, groundM, baseM, topM, radiusM } = caster;
  const at = (outM: number, heightM: number): Point3 => ({
    xM: xM + ex * outM * localPerM,
    yM: yM + ey * outM * localPerM,
    zM: groundM + heightM,
  });
  const lengthM = topM - baseM;
  if (caster.form === 'cylinder') return at(radiusM, topM);
  if (caster.form === 'cone') return lengthM * cot >= radiusM ? at(0, topM) : at(radiusM, baseM);
  const halfM = caster.form === 'dome' ? lengthM : lengthM / 2;
  const centreM = topM - halfM;
  const size = Math.hypot(radiusM, halfM * cot);
  return at(radiusM ** 2 / size, centreM + (halfM ** 2 * cot) / size);
}

/**
 * Level distance, true metres, at which a ray that falls by `fallPerM` a level metre first meets the ground; 0 when it
 * starts below it; null when it meets none within `longestM` or leaves the ground that is known.
 */
function toGroundM(
  from: Point3,
  [ex, ey]: readonly [number, number],
  fallPerM: number,
  { ground, localPerM, longestM }: TipOptions,
): number | null {
  const aboveM = (s: number): number => {
    const xM = from.xM + ex * s * localPerM;
    const yM = from.yM + ey * s * localPerM;
    return isOnGrid(ground, xM, yM) ? from.zM - s * fallPerM - sampleGrid(ground, xM, yM) : Number.NaN;
  };
  if (aboveM(0) <= 0) return 0;
  const stepM = Math.min(STEP_M, ground.cellM / 2);
  const steps = Math.ceil(longestM / stepM);
  for (let i = 1; i <= steps; i++) {
    const above = aboveM(i * stepM);
    if (Number.isNaN(above)) return null;
    if (above > 0) continue;
    let low = (i - 1) * stepM;
    let high = i * stepM;
    while (high - low > CLOSE_M) {
      const middle = (low + high) / 2;
      if (aboveM(middle) > 0) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  }
  return null;
}

const isOnGrid = (grid: Grid, xM: number, yM: number): boolean =>
  xM >= grid.westM &&
  xM <= grid.westM + grid.columns * grid.cellM &&
  yM <= grid.northM &&
  yM >= grid.northM - grid.rows * grid.cellM;

function tipOf(
  caster: ShadowCaster,
  sun: ShadowSun,
  options: TipOptions,
): { at: Point3; cast: Point3 } | null {
  if (sun.altitudeRad <= 0) return null;
  const cast = castingPoint(caster, sun, options.localPerM);
  const away = awayFromSun(sun);
  const levelM = toGroundM(cast, away, Math.tan(sun.altitudeRad), options);
  if (levelM === null) return null;
  const xM = cast.xM + away[0] * levelM * options.localPerM;
  const yM = cast.yM + away[1] * levelM * options.localPerM;
  return { cast, at: { xM, yM, zM: sampleGrid(options.ground, xM, yM) } };
}

/** The tip of a shadow; null when the sun is down or the shadow does not end on known ground within the length. */
export function shadowTip(caster: ShadowCaster, sun: ShadowSun, options: TipOptions): ShadowTip | null {
  const tip = tipOf(caster, sun, options);
  if (!tip) return null;
  const foot = caster.casts === 'crown' ? caster : tip.cast;
  const betweenM = (a: { xM: number; yM: number }, b: { xM: number; yM: number }) =>
    Math.hypot(a.xM - b.xM, a.yM - b.yM) / options.localPerM;
  const withSunAt = (altitudeRad: number) => tipOf(caster, { ...sun, altitudeRad }, options)?.at ?? null;
  const inner = withSunAt(sun.altitudeRad + SUN_RADIUS_RAD);
  const outer = withSunAt(sun.altitudeRad - SUN_RADIUS_RAD);
  const fuzzyM =
    inner && outer ? betweenM(inner, outer) / 2 : inner ? betweenM(inner, tip.at) : Number.POSITIVE_INFINITY;
  return { ...tip, lengthM: betweenM(foot, tip.at), fuzzyM };
}

/** Elevation of the highest ground there is. */
export function highestGroundM(ground: Grid): number {
  let highestM = Number.NEGATIVE_INFINITY;
  for (const z of ground.values) if (z > highestM) highestM = z;
  return highestM;
}

/** False where the ground itself stands between a point and the middle of the sun. */
export function sunClearsGround(
  from: Point3,
  sun: ShadowSun,
  { ground, localPerM }: Omit<TipOptions, 'longestM'>,
  highestM: number,
): boolean {
  const [ex, ey] = awayFromSun(sun);
  const climb = Math.tan(sun.altitudeRad);
  const stepM = Math.max(STEP_M, ground.cellM / 2);
  for (let s = stepM; from.zM + s * climb < highestM; s += stepM) {
    const xM = from.xM - ex * s * localPerM;
    const yM = from.yM - ey * s * localPerM;
    if (!isOnGrid(ground, xM, yM)) return true;
    if (sampleGrid(ground, xM, yM) > from.zM + s * climb) return false;
  }
  return true;
}
