import type { LonLat } from '../geo/frame.ts';
import type { FeatureId } from '../site/document.ts';

/** A woody thing as it stands at the end of the chosen year's growing season. */
export interface GrownThing {
  readonly id: FeatureId;
  readonly kind: 'tree' | 'belt' | 'block' | 'wall' | 'building';
  /** What to call it in a sentence: "Walnut N2", "Spruce belt, west edge". */
  readonly label: string;
  /** Botanical name as the file writes it, of what stands there in that year; undefined: none is named. */
  readonly species?: string;
  readonly heightM: number;
  /** Height at slow and fast growth. */
  readonly heightBandM: readonly [number, number];
  readonly baseM: number;
  /** Trees only. */
  readonly radiusM: number;
  readonly radiusBandM: readonly [number, number];
  /** Where its foliage or wall stands on the ground: rings of longitude and latitude (belts as buffered strips, trees as circles). */
  readonly footprint: readonly (readonly LonLat[])[];
}

/** All that stands in one year of one layout. Things that are removed or not planted by then are left out. */
export interface GrownPlan {
  /** Years after baseYear. */
  readonly year: number;
  readonly things: readonly GrownThing[];
}
