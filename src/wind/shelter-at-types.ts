import type { ShelterRequest } from './shelter-types.ts';

/** The shelter of one spot instead of a grid. */
export interface ShelterAtRequest extends Omit<ShelterRequest, 'grid'> {
  /** The spot, local frame. */
  readonly xM: number;
  readonly yM: number;
}

/** A figure for the growing season, the rest of the year and the year. */
export type BySeason = readonly [growing: number, rest: number, year: number];

/** One thing that slows the wind of one sector. */
export interface SectorShelter {
  readonly thing: number;
  /** Along the wind from the spot to it: positive where it stands upwind, 0 inside it. */
  readonly distanceM: number;
  /** Its top above ground where the wind crosses it. */
  readonly heightM: number;
  /** Share by which it alone cuts this sector's wind further than trees and land do. */
  readonly cut: BySeason;
}

/** One direction of the wind climate at the spot. Figures of a season in which no wind blows from there are NaN. */
export interface SectorAt {
  /** Clockwise from true north, where the wind comes from. */
  readonly fromDeg: number;
  /** Share of the season's hours. */
  readonly frequency: BySeason;
  /** Mean speed of the open wind at the climate's height, m/s. */
  readonly openSpeedMps: BySeason;
  /** Share of that speed which is left at the spot. */
  readonly share: BySeason;
  /** The same with no belt, block, wall or building: trees and the lie of the land. */
  readonly shareWithoutThings: BySeason;
  /** Strongest first; empty where no thing does anything. */
  readonly by: readonly SectorShelter[];
}

/** What one thing is worth at the spot. */
export interface ThingAt {
  readonly thing: number;
  /** Share of the open wind that would come back if it alone were gone. */
  readonly comesBack: BySeason;
}

/** Where the wind comes from at a spot, open and sheltered. */
export interface ShelterAt {
  /** Height of the open wind's speeds, metres. */
  readonly climateHeightM: number;
  readonly readingHeightM: number;
  /** As the map has them; NaN inside a building and where there is no ground. */
  readonly windShare: BySeason;
  readonly galeHours: BySeason;
  /** Share of open wind with no belt, block, wall or building at all. */
  readonly shareWithoutThings: BySeason;
  /** Clockwise from north. */
  readonly sectors: readonly SectorAt[];
  /** Those that are worth anything, the most in a year first. */
  readonly things: readonly ThingAt[];
}
