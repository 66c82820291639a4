/**
 * Single crowns as the engines see them: plain arrays, local frame, metres.
 * A crown is a solid of foliage of constant leaf-area density; stems are not modelled.
 */
export const CROWN_FORMS = ['ellipsoid', 'dome', 'cone', 'cylinder'] as const;
export type CrownForm = (typeof CROWN_FORMS)[number];

/** Float64 values a crown, in this order. */
export const CROWN_STRIDE = 8;
export const CROWN_X = 0;
export const CROWN_Y = 1;
/** Elevation of the ground at the stem (m above datum). */
export const CROWN_GROUND = 2;
/** Height of the crown's base and top above that ground (m). */
export const CROWN_BASE = 3;
export const CROWN_TOP = 4;
export const CROWN_RADIUS = 5;
/** Optical depth per metre of path, G * leaf-area density (1/m), in full leaf and leafless. */
export const CROWN_DEPTH_ON = 6;
export const CROWN_DEPTH_OFF = 7;

export interface CrownSet {
  readonly count: number;
  /** count * CROWN_STRIDE. */
  readonly values: Float64Array;
  /** Index into CROWN_FORMS. Ellipsoid between base and top; dome: half-ellipsoid standing on the base; cone: apex at the top; cylinder: base to top. */
  readonly form: Uint8Array;
  /** Index of the leaf class (see LeafPhases). */
  readonly leafClass: Uint8Array;
  /** Index into the scene's list of things (which feature this belongs to). */
  readonly thing: Uint16Array;
}
