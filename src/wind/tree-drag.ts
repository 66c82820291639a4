/**
 * How scattered trees slow the wind at the ground, from their roughness density lambda: the area they show to the wind
 * per area of ground.
 *
 * Raupach 1992 parts the drag between the ground and what stands on it: tau_S / tau = 1 / (1 + beta lambda), with
 * beta = C_R / C_S. Raupach 1994 gives for the same surface the friction velocity at the tree tops, the displacement
 * height d and the roughness length z0; with them and the logarithmic profile the ground's friction velocity is set
 * against that of open ground under the same wind aloft:
 *
 *   f = (1 + beta lambda)^(-1/2) * ln(z_r / z0(0)) / ln((z_r - d) / z0(lambda)),   lengths in tree heights
 *
 * The drag partition and C_S, C_R, c_d1, psi_h and the greatest u*\/U_h were read in public sources that state them
 * (the paper's abstract; the defaults of a published canopy package; the formulas of a published wind-risk package).
 * That it is a friction velocity near the ground taken for the wind at 1.5 m is the assumption made for belts too.
 */

/** Drag coefficients of the ground and of what stands on it, at the height of the tree tops (Raupach 1994). */
const GROUND_DRAG = 0.003;
const TREE_DRAG = 0.3;
/** Greatest friction velocity over wind speed at the tree tops (Raupach 1994). */
const MOST_FRICTION = 0.3;
/** c_d1 of the displacement height, and the influence of the layer just above the trees on z0 (Raupach 1994). */
const DISPLACEMENT_FACTOR = 7.5;
const SUBLAYER = 0.193;
const VON_KARMAN = 0.4;
/** Our guess: so many tree heights up the wind does not feel the trees of a garden. */
const UNFELT_H = 10;
/** Our bound: beyond this roughness density trees stand in each other's lee as in a wood, and no more is taken off. */
export const MOST_ROUGHNESS_DENSITY = 0.5;

/** Displacement height and roughness length in tree heights. */
export function canopyRoughness(lambda: number): {
  readonly displacement: number;
  readonly roughness: number;
} {
  // The area index of Raupach 1994 counts both sides a plant turns to the wind: twice the frontal area.
  const root = Math.sqrt(DISPLACEMENT_FACTOR * 2 * lambda);
  const below = root > 0 ? (1 - Math.exp(-root)) / root : 1;
  const friction = Math.min(MOST_FRICTION, Math.sqrt(GROUND_DRAG + TREE_DRAG * lambda));
  return { displacement: 1 - below, roughness: below * Math.exp(-VON_KARMAN / friction + SUBLAYER) };
}

/** Share of open ground's friction velocity that is left on the ground at a roughness density. */
export function frictionShareAmongTrees(roughnessDensity: number): number {
  const lambda = Math.min(MOST_ROUGHNESS_DENSITY, Math.max(0, roughnessDensity));
  const { displacement, roughness } = canopyRoughness(lambda);
  const open = Math.log(UNFELT_H / canopyRoughness(0).roughness);
  const partition = 1 / Math.sqrt(1 + (TREE_DRAG / GROUND_DRAG) * lambda);
  return Math.min(1, (partition * open) / Math.log((UNFELT_H - displacement) / roughness));
}

/** Nodes of the table below, and one to spare. */
export const DRAG_NODES = 2048;
let built: Float32Array | null = null;

/**
 * Deficits 1 - f by the square root of the roughness density, which they are steepest in: node / DRAG_NODES of the root
 * of the greatest density. Read between its nodes within 1e-6 of the formula. Built once a thread.
 */
export function dragTable(): Float32Array {
  built ??= Float32Array.from(
    { length: DRAG_NODES + 2 },
    (_, node) => 1 - frictionShareAmongTrees(MOST_ROUGHNESS_DENSITY * (node / DRAG_NODES) ** 2),
  );
  return built;
}
