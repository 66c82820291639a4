import type { LonLat } from '../geo/frame.ts';
import type { Horizon, HoursLost } from '../jobs/run-view-from.ts';

/** The horizon from a spot, with what it was asked for. */
export interface HorizonFound extends Horizon {
  readonly hours: Record<'month' | 'season' | 'year', HoursLost>;
  readonly at: LonLat;
  readonly year: number;
  readonly calendarYear: number;
  readonly layout: string | null;
  readonly assumed: readonly string[];
}
