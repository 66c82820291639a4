import type { Frame } from '../geo/frame.ts';
import { ringToLocal } from '../geo/rasterise.ts';
import type { Ring } from './convex.ts';

/** A polygon's rings in the local frame, outer first, first vertex not repeated. */
export const localRings = (frame: Frame, coordinates: readonly (readonly (readonly number[])[])[]): Ring[] =>
  coordinates.map((ring) => ringToLocal(frame, ring.slice(0, -1)));
