import type { LonLat } from '../geo/frame.ts';
import type { Taped } from '../geo/tape.ts';
import type { FindablePoint } from '../outside/findable-points.ts';
import type { Offsets } from '../outside/offsets.ts';
import type { ReferenceLine } from '../outside/reference-line.ts';
import type { StakedThing } from './staked-thing.ts';

/** One stake: where the tip of the shadow will be at a clock time, and how to find the place with a tape. */
export interface Stake extends Offsets {
  /** From 1, by the clock. */
  readonly number: number;
  /** HH:MM on the clocks there. */
  readonly time: string;
  readonly utcMs: number;
  /** Apparent altitude of the middle of the sun, and its azimuth from true north. */
  readonly sunAltitudeDeg: number;
  readonly sunAzimuthDeg: number;
  readonly lonLat: LonLat;
  /** Over what place on the ground the point stands that casts the tip, and how high above that ground. */
  readonly castOver: LonLat;
  readonly castHeightM: number;
  /** From the stem, or from under what casts it, to the stake. */
  readonly fromFoot: Taped;
  /** Half the width of the half-shade along the shadow, m. */
  readonly fuzzyM: number;
  /** How much further the tip falls for each metre that the thing is taller, m. */
  readonly furtherPerMetreM: number;
  /** What to know before a stake is put there; often none. */
  readonly cautions: readonly string[];
}

/** A clock time for which there is no stake. */
export interface NoStake {
  readonly time: string;
  /** "the sun is not up". */
  readonly why: string;
}

export interface StakePlan {
  readonly thing: StakedThing;
  /** YYYY-MM-DD, and the zone whose clocks the times are of. */
  readonly date: string;
  readonly timeZone: string;
  /** The place whose shadow is watched; null: the corner that reaches furthest, or a crown. */
  readonly alongM: number | null;
  readonly points: readonly FindablePoint[];
  readonly line: ReferenceLine;
  readonly stakes: readonly Stake[];
  readonly without: readonly NoStake[];
  /** What holds for all stakes, such as bare branches. */
  readonly notes: readonly string[];
}

/** What is asked for. */
export interface StakeWish {
  /** YYYY-MM-DD. */
  readonly date: string;
  /** HH:MM; null: every full hour from an hour after sunrise to an hour before sunset. */
  readonly times: readonly string[] | null;
  /** A shadow longer than this is not staked, m. */
  readonly longestM: number;
  /** Where along a belt, wall or outline; undefined: its usual place; null: the corner that reaches furthest. */
  readonly alongM?: number | null;
  /** Letters of the two points; null: the nearest side of a field. */
  readonly line: readonly [string, string] | null;
}
export const LONGEST_M = 60;
/** No tip is followed further than this, whatever is asked for, m. */
export const FURTHEST_M = 400;
