import type { LonLat } from '../geo/frame.ts';
import type { WindHere } from '../jobs/run-shelter-at.ts';

/** The wind at a spot, with what it was asked for. */
export interface WindFound extends WindHere {
  readonly lonLat: LonLat;
  readonly year: number;
  readonly assumed: readonly string[];
}
