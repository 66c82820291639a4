declare const frameBrand: unique symbol;

/** Longitude and latitude, WGS 84, degrees. */
export type LonLat = readonly [number, number];
/** x east and y north of the frame's origin, along the UTM grid, metres. */
export type LocalXY = readonly [number, number] & { readonly [frameBrand]?: 'local' };

/**
 * The site's frame: the WGS 84 UTM zone of its centre, with a whole-metre origin taken off so that
 * coordinates stay small.
 */
export interface Frame {
  /** 326zz north, 327zz south. */
  readonly epsg: number;
  readonly originEastingM: number;
  readonly originNorthingM: number;
  readonly centreLonLat: LonLat;
  /** Angle from true north to grid north at the centre, clockwise positive, radians. */
  readonly convergenceRad: number;
}
