import type { Frame } from '../geo/frame.ts';
import type { Pace } from '../growth/height-curve.ts';
import type { Grid } from '../numeric/grid.ts';
import type { Foliage } from '../plants/foliage-range.ts';
import type { FeatureId, Kind } from '../site/document.ts';
import type { WeatherTable } from '../sun/weather/weather-table.ts';

/** Things that are supposed to be gone; nothing of it is written in the site. */
export interface Felled {
  readonly ids: readonly FeatureId[];
  /** From this year after the base year on. */
  readonly fromYear: number;
}

/** Factors on a season's growth, index 0 the base year's; what lies past the end grows on as in the last. */
export type GrowthSpeeds = ReadonlyMap<FeatureId, Float32Array>;

/** Which state of the site is wanted. */
export interface GrowthMoment {
  /** Years after the site's base year. */
  readonly year: number;
  /** One alternative design over the common features; null: the common features alone. */
  readonly layout: string | null;
  readonly pace: Pace;
  /** Crown radius of single trees against the expected; absent: 1. Belts and blocks keep the width they are drawn with. */
  readonly crownSpreadFactor?: number;
  /** Absent: as usual. */
  readonly foliage?: Foliage;
  /** How fast each thing grew in each year from the base year on, 1 as usual; absent, or a thing that is not in it: as usual. */
  readonly speeds?: GrowthSpeeds | null;
  /** Absent or null: everything stands as the site says. */
  readonly felled?: Felled | null;
}

export interface SceneOptions extends GrowthMoment {
  readonly frame: Frame;
  readonly ground: Grid;
  readonly weather: WeatherTable | null;
  /** Elevations of the tops around, on the ground's datum and laid on the frame; absent: none are known. */
  readonly surface?: Grid | null;
}

/** What an engine's `thing` index stands for. */
export interface SceneThing {
  readonly id: FeatureId;
  readonly kind: Kind;
  readonly label: string;
}
