/** What the shelter kernel (assembly/swaths.ts) and what fills its memory agree on. */

/** Leaf states that are worked out side by side: one lane each. */
export const LANES = 4;
/** Bytes of one float in every lane. */
export const LANE_BYTES = 16;
/** Nodes to one height of distance in a deficit table. */
export const NODES_PER_HEIGHT = 20;
/** Nodes per unit of share in a gale table; it reaches shares of 1.25 (the wind beside an end is up to 1.2). */
export const GALE_NODES = 1024;
