import type { GridSpec } from '../numeric/grid.ts';
import type { LightScene } from './light-types.ts';
import type { RowChoice } from './shadow-tile.ts';

export interface FirstLastSunRequest {
  readonly scene: LightScene;
  readonly grid: GridSpec;
  /** Height above ground at which light is read. */
  readonly readingHeightM: number;
  /** Only these rows of the grid; the result then holds them alone, in their order. Without: all. */
  readonly rows?: RowChoice;
}

/** The day that stands for a month. */
export interface DayOfMonth {
  /** Counted from 1. */
  readonly dayOfMonth: number;
  /** Where the site's clocks stand at midnight, UTC milliseconds: all minutes are counted from here. */
  readonly midnightMs: number;
  /** Sunrise and sunset on a level horizon, minutes; null where the sun does not come up. */
  readonly riseMin: number | null;
  readonly setMin: number | null;
  /** Between two looks at the sun, minutes: an edge of something solid is found to half of it. 0 without sun. */
  readonly stepMin: number;
}

/**
 * When the sun first and last reaches each cell with at least SUN_COUNTS_FROM of its beam, on one day of each month.
 * Float32, band-major (month * cells + cell).
 */
export interface FirstLastSun {
  readonly grid: GridSpec;
  /** Minutes after midnight; NaN where there is no such sun all day, inside buildings and where ground is missing. */
  readonly firstMin: Float32Array;
  readonly lastMin: Float32Array;
  /** Hours with such sun, shade between taken off; 0 without; NaN inside buildings and where ground is missing. */
  readonly sunHours: Float32Array;
  /** One a month. */
  readonly days: readonly DayOfMonth[];
}
