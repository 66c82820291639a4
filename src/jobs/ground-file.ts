import type { Frame } from '../geo/frame.ts';
import type { Grid } from '../numeric/grid.ts';

/** Reads a raster of elevations and lays it on the site's frame. */
export interface GroundFileJob {
  readonly fileName: string;
  readonly bytes: ArrayBuffer;
  readonly frame: Frame;
  /** Local box that must be covered, metres; the raster is read with a margin around it. */
  readonly box: { west: number; south: number; east: number; north: number };
}
export interface GroundFileResult {
  readonly ground: Grid;
  /** What the file said of itself, for the panel: its system, cell size, size. */
  readonly description: string;
}
