/** What is taken where the file is silent. Values of the file format unless marked. */

/** Height at planting where `plantedYear` is given without `heightM`. */
export const PLANTED_HEIGHT_M = 0.6;
/** Share of a belt's or block's silhouette through which daylight shows, in leaf. */
export const POROSITY_LEAF_ON = 0.4;
/** Optical depth without leaves as a share of that in leaf, unless the species says otherwise. */
const LEAF_OFF_DEPTH_SHARE = 0.35;

/**
 * Daylight through a leafless stand from that in leaf: the optical depth, −ln(porosity), is cut to
 * LEAF_OFF_DEPTH_SHARE of its value in leaf.
 */
export const leafOffPorosity = (leafOnPorosity: number): number => leafOnPorosity ** LEAF_OFF_DEPTH_SHARE;
