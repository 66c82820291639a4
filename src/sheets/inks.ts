/** The inks of paper. Colour never carries meaning alone: a dash, a weight or a hatch goes with it. */
export const PAPER = '#ffffff';
export const INK = '#1d2a26';
export const SOFT_INK = '#55625d';
export const RULE = '#b9b4a4';
export const LEAF = '#2f6b4f';
export const LEAF_WASH = '#dbe9dd';
export const STONE = '#8d8a80';
export const WATER = '#1f5f7a';
export const CLAY = '#a8491f';
