import type { CrownSet } from '../crowns/crown-set.ts';
import type { LeafPhases } from '../crowns/leaf-phases.ts';
import type { PrismSet } from '../crowns/prism-set.ts';
import type { Grid, GridSpec } from '../numeric/grid.ts';
import type { SkyClimate } from '../sun/sky-climate.ts';
import type { RowChoice } from './shadow-tile.ts';
import type { Surroundings } from './surroundings.ts';

/** Everything the light engine needs to know of the world, in the local frame. Structured-cloneable. */
export interface LightScene {
  readonly latDeg: number;
  readonly lonDeg: number;
  readonly convergenceRad: number;
  /** The calendar year whose days are computed, and the IANA zone in which its months and season are cut. */
  readonly calendarYear: number;
  readonly timeZone: string;
  /** 1 for each day of the growing season, index 0 = 1 January; 365 or 366 long. */
  readonly growingDay: Uint8Array;
  readonly sky: SkyClimate;
  /** Ground elevations, local frame; may reach far beyond the computed cells. A plane is a coarse grid. */
  readonly ground: Grid;
  readonly crowns: CrownSet;
  readonly prisms: PrismSet;
  readonly leaf: LeafPhases;
  /** Tops of the woods around, where a surface raster is given. */
  readonly surroundings: Surroundings | null;
}

export interface LightRequest {
  readonly scene: LightScene;
  readonly grid: GridSpec;
  /** Height above ground at which light is read. */
  readonly readingHeightM: number;
  /** Only these rows of the grid; the result then holds them alone, in their order. Without: all. */
  readonly rows?: RowChoice;
}

/** What of a scene changes from year to year. */
export type GrownThings = Pick<LightScene, 'crowns' | 'prisms'>;

/**
 * Several years of one scene: its things are those of `years`, in their order; everything else of the scene, the sun's
 * year among it, serves all of them, and its leaf classes are those of all.
 */
export interface LightYearsRequest extends LightRequest {
  readonly years: readonly GrownThings[];
  /** Coarse: enough for means over fields; absent: as fine as what follows a hand. */
  readonly coarse?: boolean;
}

/** One year on the rows asked for: float32 by cell, NaN inside buildings and where ground is missing. */
export interface YearLight {
  /** Share of open light over the growing season. */
  readonly lightShare: Float32Array;
  /** Hours of direct sun in the year, and in the growing season (months that lie partly in it by their days). */
  readonly directHours: Float32Array;
  readonly seasonHours: Float32Array;
  /** Share of open light and hours of direct sun in the month of the shortest day. */
  readonly midwinterShare: Float32Array;
  readonly midwinterHours: Float32Array;
}

/** Several small grids of one scene, such as the patches of a year. */
export interface LightOnGridsRequest {
  readonly scene: LightScene;
  readonly places: readonly Omit<LightRequest, 'scene'>[];
}

/** All float32, band-major (band * cells + cell), NaN inside buildings and where ground is missing. */
export interface LightResult {
  readonly grid: GridSpec;
  /** 12 bands: hours of direct beam in each month. */
  readonly directHours: Float32Array;
  /** 12 bands: the same with no obstruction but the terrain. */
  readonly openHours: Float32Array;
  /** 13 bands: share of open light by month, then the growing season. */
  readonly lightShare: Float32Array;
  /** 12 bands: mol m-2 d-1 of photosynthetic photons. */
  readonly dailyLightIntegral: Float32Array;
  /** Photons on unobstructed ground by month, mol m-2 d-1, and days of the growing season in each month. */
  readonly openDailyLightIntegral: Float32Array;
  readonly growingDaysByMonth: Float32Array;
  /** Sun directions used, and the stated error of the year's direct hours as a share of open hours. */
  readonly directions: number;
  readonly quadratureError: { readonly mean: number; readonly p99: number };
}

/** Light lost to each thing on the cells of `mask`, over the growing season. */
export interface LightCostRequest extends LightRequest {
  /** 1 where a cell counts. */
  readonly mask: Uint8Array;
  readonly thingCount: number;
}
export interface LightCostResult {
  /** Mean direct hours a day of the growing season that would come back on the counted cells if the thing were gone. */
  readonly directHoursADay: Float32Array;
  /** Mean share of open light that would come back. */
  readonly lightShare: Float32Array;
}
