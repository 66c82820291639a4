/**
 * Belts, blocks, buildings and walls as the engines see them: convex upright prisms, cut so that pieces of one
 * thing never overlap (a belt counts once at its bends). Each piece stands on its own ground plane, so that
 * base and top follow the ground.
 */
export const PRISM_STRIDE = 7;
/** Ground plane under the piece: elevation = A + B * x + C * y, local metres. */
export const PRISM_GROUND_A = 0;
export const PRISM_GROUND_B = 1;
export const PRISM_GROUND_C = 2;
/** Base and top above that plane (m); a solid's base may be far below it. */
export const PRISM_BASE = 3;
export const PRISM_TOP = 4;
/** Optical depth per metre of path (1/m), in full leaf and leafless; unused where solid. */
export const PRISM_DEPTH_ON = 5;
export const PRISM_DEPTH_OFF = 6;

export interface PrismSet {
  readonly count: number;
  /** count + 1 offsets, in vertices, into ringXY. */
  readonly ringStart: Uint32Array;
  /** x, y of each vertex, counter-clockwise, first not repeated; convex. */
  readonly ringXY: Float64Array;
  /** count * PRISM_STRIDE. */
  readonly values: Float64Array;
  /** 1: nothing passes. */
  readonly solid: Uint8Array;
  readonly leafClass: Uint8Array;
  readonly thing: Uint16Array;
}
