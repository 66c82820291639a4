import type { GroundRequest, GroundResult } from '../geo/read-ground.ts';

/** Reads a raster of elevations and lays it on the site's frame. */
export type GroundFileJob = GroundRequest;
export type GroundFileResult = GroundResult;
