/**
 * Angles, branded so that a true azimuth cannot be handed to something that expects a grid azimuth.
 * Azimuths run clockwise from north; altitude is above the horizontal.
 */
declare const angleBrand: unique symbol;

/** Clockwise from true north, radians. */
export type TrueAzimuthRad = number & { readonly [angleBrand]: 'true azimuth' };
/** Clockwise from grid north (the frame's y axis), radians. */
export type GridAzimuthRad = number & { readonly [angleBrand]: 'grid azimuth' };

export const degToRad = (deg: number): number => (deg * Math.PI) / 180;
export const radToDeg = (rad: number): number => (rad * 180) / Math.PI;

export const trueAzimuthFromDeg = (deg: number): TrueAzimuthRad => degToRad(deg) as TrueAzimuthRad;

/**
 * Grid azimuth of a true azimuth.
 * @param convergenceRad grid convergence: the angle from true north to grid north, clockwise positive.
 */
export const gridAzimuth = (trueRad: TrueAzimuthRad, convergenceRad: number): GridAzimuthRad =>
  (trueRad - convergenceRad) as unknown as GridAzimuthRad;
