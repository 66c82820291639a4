/** What the shelter kernel (assembly/swaths.ts) and what fills its memory agree on. */

/** Leaf states that are worked out side by side: one lane each. */
export const LANES = 4;
/** Bytes of one float in every lane. */
export const LANE_BYTES = 16;
/** Nodes to one height of distance in a deficit table. */
export const NODES_PER_HEIGHT = 20;
/** Nodes per unit of share in a gale table. */
export const GALE_NODES = 1024;
/**
 * Bytes of what one direction adds to one season: addresses of the sums of speed deficit (four floats a cell), of the
 * sums of gale share less that of open ground (one float a cell) and of the share of hours with a gale by share of open
 * wind (0: there is never one), i32, and four to spare; what a whole deficit in each leaf state counts, m/s, four f32;
 * what each leaf state counts of the gales, four f32.
 */
export const SEASON_BYTES = 48;
/** Bytes of where one leaf state of a piece falls in the table of the barrier function (fillLine). */
export const ROW_BYTES = 16;
/** Bytes of one scattered tree (fillField). */
export const TREE_BYTES = 32;
