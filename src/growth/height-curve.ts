/**
 * Height over age by Chapman-Richards: H = A (1 - exp(-k t))^p, t in years from seed, H and A in metres.
 * The form is the base of the current British top-height models and many others; the parameters of each species are
 * in `plants/` with their source.
 */
export interface HeightCurve {
  /** A: the height the curve approaches, m. */
  readonly maxHeightM: number;
  /** k: 1/year. */
  readonly ratePerYear: number;
  /** p: above 1 the first years are slow. */
  readonly shape: number;
}

/** How well the plants take: the ends of the band that every future year carries. */
export type Pace = 'slow' | 'usual' | 'fast';

/**
 * Factors on rate and final height. Common practice, no source; the width of the band is in line with published site
 * classes (neighbouring yield classes of one species differ by some 10-15 % in top height).
 */
const PACE_FACTORS: Record<Pace, { readonly rate: number; readonly top: number }> = {
  slow: { rate: 0.8, top: 0.87 },
  usual: { rate: 1, top: 1 },
  fast: { rate: 1.25, top: 1.13 },
};

/** A measured tree at this share of its curve's final height, or above, grows no further (site file, "Years"). */
export const FULL_GROWN_SHARE = 0.95;

/** Height (m) at an age in years; 0 at or before age 0. */
export function heightAtAge(curve: HeightCurve, ageYears: number): number {
  if (ageYears <= 0) return 0;
  return curve.maxHeightM * (1 - Math.exp(-curve.ratePerYear * ageYears)) ** curve.shape;
}

/** Age in years at which the curve reaches a height (m); Infinity at or above its final height, 0 at or below 0. */
export function ageAtHeight(curve: HeightCurve, heightM: number): number {
  if (heightM <= 0) return 0;
  if (heightM >= curve.maxHeightM) return Number.POSITIVE_INFINITY;
  return -Math.log(1 - (heightM / curve.maxHeightM) ** (1 / curve.shape)) / curve.ratePerYear;
}

/**
 * The curve of one plant on one site. Rootstock and site vigour scale the height at every age (the anamorphic curves
 * of site-index practice); pace scales the rate as well.
 * @param sizeFactor rootstock times site vigour, 1 = a seedling tree on usual ground.
 */
export function curveOnSite(curve: HeightCurve, sizeFactor: number, pace: Pace): HeightCurve {
  const factors = PACE_FACTORS[pace];
  return {
    maxHeightM: curve.maxHeightM * sizeFactor * factors.top,
    ratePerYear: curve.ratePerYear * factors.rate,
    shape: curve.shape,
  };
}

/**
 * Height (m) so many seasons after a height was known; seasons may be parts of one, and below 0. A plant at 0.95 of its
 * curve's final height or above stays as it is.
 */
export function heightAfterSeasons(curve: HeightCurve, knownM: number, seasons: number): number {
  if (knownM >= FULL_GROWN_SHARE * curve.maxHeightM) return knownM;
  return heightAtAge(curve, ageAtHeight(curve, knownM) + seasons);
}
