import type { CareEvent } from './care.ts';
import type { SpreadRule } from './crown-spread.ts';
import type { HeightCurve } from './height-curve.ts';
import type { SeasonSpeeds } from './season-speeds.ts';

/** What is known of one tree, belt or block, and of its species. Years are calendar years. */
export interface WoodyPlant {
  /** The species' curve; null or absent: nothing grows. */
  readonly curve?: HeightCurve | null;
  readonly spread?: SpreadRule | null;
  /** Share of the height that is clear stem, where no crown base is given. */
  readonly clearStemShare?: number;
  readonly status?: 'existing' | 'planned';
  readonly heightM?: number;
  readonly measuredYear?: number;
  readonly plantedYear?: number;
  readonly removedYear?: number;
  readonly crownRadiusM?: number;
  readonly crownBaseM?: number;
  /** Height of a standing plant where none is given, m; default 6. */
  readonly standingHeightM?: number;
  /** Final size against a tree on its own roots; default 1. */
  readonly rootstockFactor?: number;
  /** Site vigour; default 1. */
  readonly vigour?: number;
  readonly care?: readonly CareEvent[];
  /** False: it dies of losing its whole crown. */
  readonly shootsAgain?: boolean;
  /** Absent: every season is a usual one. */
  readonly speeds?: SeasonSpeeds;
}

/** Final size against a seedling tree on usual ground. */
export const sizeFactor = (plant: WoodyPlant): number => (plant.rootstockFactor ?? 1) * (plant.vigour ?? 1);
