import type { Barrier } from '../crowns/barrier.ts';
import type { CrownSet } from '../crowns/crown-set.ts';
import type { LeafPhases } from '../crowns/leaf-phases.ts';
import type { Grid, GridSpec } from '../numeric/grid.ts';
import type { Fineness } from './fineness.ts';
import type { Relief } from './relief.ts';

/** One sector of the wind climate in one season; frequencies of a season with its calms add to 1. */
export interface ClimateSector {
  readonly fromDeg: number;
  readonly frequency: number;
  readonly meanSpeedMps: number;
  readonly weibullK: number;
}

/** The open wind of the site at `heightM`, seasons apart. */
export interface WindClimate {
  readonly heightM: number;
  readonly growing: { readonly calmShare: number; readonly sectors: readonly ClimateSector[] };
  readonly rest: { readonly calmShare: number; readonly sectors: readonly ClimateSector[] };
}

/** What of the model acts; each guess can be switched off (shelter-guesses.ts says what each does). */
export interface ShelterOptions {
  readonly obliqueWind: boolean;
  readonly parallelWind: boolean;
  readonly shortThings: boolean;
  readonly youngBelts: boolean;
  readonly raisedFeet: boolean;
  readonly endsAndGaps: boolean;
  readonly insideWoods: boolean;
  readonly scatteredTrees: boolean;
  readonly landform: boolean;
  /** Several belts: what each leaves is multiplied; otherwise the smallest share wins. */
  readonly chainedBelts: boolean;
}

export interface ShelterScene {
  readonly convergenceRad: number;
  readonly growingDay: Uint8Array;
  readonly ground: Grid;
  readonly barriers: readonly Barrier[];
  /** Single trees; what of them stands in a barrier is not counted twice. */
  readonly crowns: CrownSet;
  /** What the shape of the land does to the wind; null: even. */
  readonly relief: Relief | null;
  readonly leaf: LeafPhases;
  readonly climate: WindClimate;
}

export interface ShelterRequest {
  readonly scene: ShelterScene;
  readonly grid: GridSpec;
  readonly readingHeightM: number;
  /** Open 10 m wind that counts as a gale, m/s. */
  readonly galeMps: number;
  readonly options: ShelterOptions;
  /** Absent: the usual one. */
  readonly fineness?: Fineness;
}

/** A small grid of a scene, and what of the scene acts there. */
export interface ShelterPlace {
  readonly grid: GridSpec;
  /** Number of a thing whose barriers do not, as a belt not on itself; null: all do. */
  readonly without: number | null;
  /** Whether its single trees do. */
  readonly trees: boolean;
}

/** Several small grids of one scene, such as where its plants stand. */
export interface ShelterOnGridsRequest extends Omit<ShelterRequest, 'grid'> {
  readonly places: readonly ShelterPlace[];
}

/** A request some of whose barriers are in a person's hand, and will be asked for again a little changed. */
export interface HeldShelterRequest extends ShelterRequest {
  /** Their numbers among the scene's barriers. */
  readonly held: readonly number[];
}

/** Band-major float32; bands: growing season, rest of the year, year. NaN where there is no ground. */
export interface ShelterResult {
  readonly grid: GridSpec;
  /** Mean wind speed at the reading height divided by the open mean there. */
  readonly windShare: Float32Array;
  /** Hours in which share * open 10 m wind reaches the gale speed. */
  readonly galeHours: Float32Array;
  /** Directions sampled. */
  readonly directions: number;
}
