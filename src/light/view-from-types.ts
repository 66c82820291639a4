import type { SunPath } from '../sun/sun-paths.ts';
import type { LightScene } from './light-types.ts';

/** The horizon from one spot on the ground. */
export interface ViewFromRequest {
  readonly scene: LightScene;
  /** The spot, local frame. */
  readonly xM: number;
  readonly yM: number;
  /** Height of the eye above the ground. */
  readonly readingHeightM: number;
  /** How many things the scene's `thing` indices stand for; the woods around, where it has them, come after the last. */
  readonly thingCount: number;
  /** 0 = January: the month on whose middle day the leaves and one of the sun's paths are drawn. */
  readonly month: number;
}

/**
 * What is seen from a spot, unrolled in compass order, and what each thing takes of the sun.
 * Azimuths are degrees from true north, 0 to 360. Altitudes are degrees, at least 0.
 */
export interface ViewFrom {
  readonly xM: number;
  readonly yM: number;
  readonly readingHeightM: number;
  /** Elevation of the ground at the spot, m. */
  readonly groundM: number;
  readonly month: number;
  /** Size of a cell of the raster and spacing of the land's horizon, degrees. */
  readonly stepDeg: number;
  readonly columns: number;
  readonly rows: number;
  /**
   * Share of light that all foliage in sight lets through, on the middle day of the month; 1 where there is none.
   * Row-major from the highest row; the value of a cell is that of its centre. Walls, buildings and land are not in it,
   * and foliage that stands behind them is not in sight.
   */
  readonly letThrough: Float32Array;
  /** Altitude of the land's horizon at the centre of each column. */
  readonly landAltitudeDeg: Float32Array;
  /** The things in sight, nearest first. */
  readonly outlines: readonly ThingOutline[];
  readonly hours: ViewHours;
  readonly sunPaths: readonly SunPath[];
}

/** One thing as it stands before the sky: what of it is in sight above the horizontal. */
export interface ThingOutline {
  readonly thing: number;
  readonly solid: boolean;
  readonly nearestM: number;
  /** Closed rings of azimuth and altitude in turn, degrees, first point not repeated. */
  readonly rings: readonly Float32Array[];
  /** Its highest point. */
  readonly topAzimuthDeg: number;
  readonly topAltitudeDeg: number;
  /** Mean over its face of the share of light that it alone lets through, on the middle day of the month. */
  readonly letsThrough: number;
}

/** Periods of ViewHours: the twelve months, then the growing season. */
export const VIEW_PERIODS = 13;
export const VIEW_SEASON = 12;

/**
 * Hours of direct sun at the spot, by period. A thing's loss is what would come back if it alone were gone: the hours
 * that the rest lets through less those that all let through together, as in the costs of the patches. The losses of
 * all things do not add up to what is taken, because where two stand in line the sun comes back only when both are
 * gone: those hours are `shared`. For each period
 * open = got + sum of toThings + toLand + shared.
 */
export interface ViewHours {
  /** The sun's centre above the airless horizontal. */
  readonly open: Float32Array;
  /** The same above the land's horizon: the open hours of the light map. */
  readonly aboveLand: Float32Array;
  /** Beam transmittance of all there is, times hours: the direct hours of the light map. */
  readonly got: Float32Array;
  readonly toLand: Float32Array;
  /** thing * VIEW_PERIODS + period. */
  readonly toThings: Float32Array;
  readonly shared: Float32Array;
}
