/**
 * The barrier function of the Wind Erosion Prediction System (WEPS, USDA): the share of the open friction velocity
 * that is left near a windbreak. Taking it for the share of wind speed at 1.5 m is an assumption; measured belts fall
 * on both sides of it. Equation and coefficients as in the WEPS technical documentation (Hagen and others);
 * used over a map by Vigiak, Sterk, Warren & Hagen 2003.
 */

/** The function holds for -UPWIND_REACH_H < x <= DOWNWIND_REACH_H, in barrier heights; beyond it the wind is open. */
export const UPWIND_REACH_H = 5;
export const DOWNWIND_REACH_H = 35;
/** Highest optical porosity the function was made for. */
export const MAX_WEPS_POROSITY = 0.9;

/** Barrier porosity p_b: optical porosity p raised by the width w (in heights) the wind has to cross. */
export const barrierPorosity = (p: number, w: number): number => p + 0.3 * (1 - p) * (1 - Math.exp(-0.5 * w));

/** f of the barrier porosity p_b at x heights downwind (negative: upwind), inside the reach only. */
export function frictionShareOfBarrier(pb: number, x: number): number {
  const a = 0.008 - 0.17 * pb + 0.17 * pb ** 1.05;
  const b = 1.35 * Math.exp(-0.5 * pb ** 0.2);
  const c = 10 * (1 - 0.5 * pb);
  const d = 3 - pb;
  return Math.min(1, 1 - Math.exp(-a * x * x) + b * Math.exp(-0.003 * (x + c) ** d));
}

/**
 * Share of the open friction velocity.
 * @param p optical porosity through the whole width, 0 to 1.
 * @param x distance from the centreline along the wind ray, in barrier heights; negative upwind.
 * @param w width the wind crosses, in barrier heights.
 * Departs from the paper above p = 0.9, where 1 - f falls linearly to nothing at p = 1 (our guess).
 */
export function frictionShare(p: number, x: number, w: number): number {
  if (!(x > -UPWIND_REACH_H && x <= DOWNWIND_REACH_H)) return 1;
  if (p <= MAX_WEPS_POROSITY) return frictionShareOfBarrier(barrierPorosity(p, w), x);
  const atLimit = frictionShareOfBarrier(barrierPorosity(MAX_WEPS_POROSITY, w), x);
  return 1 - ((1 - atLimit) * (1 - Math.min(1, p))) / (1 - MAX_WEPS_POROSITY);
}
