/**
 * A quick look at what a belt takes of the light, to choose between many: every ray of the growing season's sun and sky
 * that crosses a belt's middle line is dimmed by the foliage on its slanting way below the belt's top. Belts one by one,
 * the ground level, the leaves out. The light engine has the last word.
 */
import type { Barrier } from '../crowns/barrier.ts';
import { type Fineness, type LightPlan, lightPlan } from '../light/light-plan.ts';
import type { LightScene } from '../light/light-types.ts';

/** Rays of the growing season gathered by where they come from. */
export interface SeasonRay {
  /** Unit vector over the ground towards the light. */
  readonly toX: number;
  readonly toY: number;
  /** Rise for each metre over the ground. */
  readonly slope: number;
  /** Share of the season's photons on open level ground. */
  readonly share: number;
}

/** The season's light is gathered into bins anyway: coarser than a hand is followed with. */
const COARSE: Fineness = { sun: { declinationLevels: 10, minutes: 30 }, skyDirections: 240 };
const AZIMUTHS = 36;
const ALTITUDES = 12;
/** Below so much of the season's open light a strip counts as dark: the lower edge of half shade. */
export const DARK_BELOW = 0.5;
/** The dark strip is looked for this finely. */
const STRIP_STEP_M = 1;
const STRIP_PLACES = 12;
/** …and no farther from the belt than so many heights. */
const STRIP_H = 1.5;
/** Rays that run along a belt more nearly than this (sine) are taken at it. */
const LEAST_SLANT = 0.05;

/** The growing season's light in bins of the sky, each by the middle of what falls into it. */
export function seasonRays(scene: LightScene): SeasonRay[] {
  const plan: LightPlan = lightPlan(scene, COARSE);
  const bins = new Map<number, { mol: number; azimuth: number; altitude: number }>();
  let whole = 0;
  for (const { ray, gridAzimuthRad, growingMol } of [...plan.sun, ...plan.sky]) {
    const mol = growingMol.reduce((sum, one) => sum + one, 0);
    if (!(mol > 0)) continue;
    const altitude = Math.atan(ray.tanAltitude);
    const turn = ((gridAzimuthRad / (2 * Math.PI)) % 1) + 1;
    const key =
      Math.floor((turn % 1) * AZIMUTHS) * ALTITUDES +
      Math.min(ALTITUDES - 1, Math.floor((altitude / (Math.PI / 2)) * ALTITUDES));
    const bin = bins.get(key) ?? { mol: 0, azimuth: 0, altitude: 0 };
    bin.mol += mol;
    bin.azimuth += mol * (turn % 1) * 2 * Math.PI;
    bin.altitude += mol * altitude;
    bins.set(key, bin);
    whole += mol;
  }
  return [...bins.values()].map(({ mol, azimuth, altitude }) => ({
    toX: Math.sin(azimuth / mol),
    toY: Math.cos(azimuth / mol),
    slope: Math.tan(altitude / mol),
    share: mol / whole,
  }));
}

/** What one belt takes. */
export interface BeltShade {
  /** Share of the season's open light that is lost, summed over the ground, m2. */
  readonly lostM2: number;
  /** Ground beside it that the belt alone leaves less than half of the season's light, m2. */
  readonly darkM2: number;
}

/** Share of the season's light that a straight-sided belt takes at a point; 1 inside it is not told apart. */
function lostAt(x: number, y: number, belt: Barrier, rays: readonly SeasonRay[]): number {
  const { xyM, heightM, widthM, porosityOn } = belt;
  const depthPerM = -Math.log(Math.max(0.01, porosityOn)) / widthM;
  let lost = 0;
  for (let v = 0; v + 3 < xyM.length; v += 2) {
    const [ax, ay] = [xyM[v] - x, xyM[v + 1] - y];
    const [ex, ey] = [xyM[v + 2] - xyM[v], xyM[v + 3] - xyM[v + 1]];
    const length = Math.hypot(ex, ey);
    if (length === 0) continue;
    const top = heightM[v / 2];
    for (const { toX, toY, slope, share } of rays) {
      // The ray x = to * d meets the line a + q e.
      const turn = toX * ey - toY * ex;
      const d = (ax * ey - ay * ex) / turn;
      const q = (ax * toY - ay * toX) / turn;
      if (!(q >= 0 && q < 1)) continue;
      const half = widthM / 2 / Math.max(LEAST_SLANT, Math.abs(turn) / length);
      const from = Math.max(0, d - half);
      const to = Math.min(d + half, top / slope);
      if (to <= from) continue;
      lost += share * (1 - Math.exp(-depthPerM * (to - from) * Math.hypot(1, slope)));
    }
  }
  return lost;
}

/**
 * @param places x, y of points that stand for `cellM2` of the field each; @param isOnField of the strip beside a belt
 */
export function beltShade(
  belt: Barrier,
  rays: readonly SeasonRay[],
  places: Float64Array,
  cellM2: number,
  isOnField: (x: number, y: number) => boolean,
): BeltShade {
  let lostM2 = 0;
  for (let i = 0; i < places.length; i += 2) lostM2 += cellM2 * lostAt(places[i], places[i + 1], belt, rays);
  return { lostM2, darkM2: darkStrip(belt, rays, isOnField) };
}

/** Ground beside a belt, step by step away from its edges, until the light is back. */
function darkStrip(
  belt: Barrier,
  rays: readonly SeasonRay[],
  isOnField: (x: number, y: number) => boolean,
): number {
  const { xyM, heightM, widthM } = belt;
  let darkM2 = 0;
  for (let v = 0; v + 3 < xyM.length; v += 2) {
    const [ex, ey] = [xyM[v + 2] - xyM[v], xyM[v + 3] - xyM[v + 1]];
    const length = Math.hypot(ex, ey);
    if (length === 0) continue;
    const places = Math.max(1, Math.min(STRIP_PLACES, Math.round(length / 5)));
    for (let k = 0; k < places; k++) {
      const q = (k + 0.5) / places;
      for (const side of [-1, 1])
        for (let away = STRIP_STEP_M / 2; away < STRIP_H * heightM[v / 2]; away += STRIP_STEP_M) {
          const off = (side * (widthM / 2 + away)) / length;
          const x = xyM[v] + q * ex - off * ey;
          const y = xyM[v + 1] + q * ey + off * ex;
          if (!isOnField(x, y) || lostAt(x, y, belt, rays) <= 1 - DARK_BELOW) break;
          darkM2 += (STRIP_STEP_M * length) / places;
        }
    }
  }
  return darkM2;
}
