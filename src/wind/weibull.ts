/**
 * The Weibull distribution of wind speeds: f(v) = (k/c)(v/c)^(k-1) exp(-(v/c)^k), mean = c * Gamma(1 + 1/k).
 */

/** Limits within which a shape is believed; outside them a few odd hours, not the climate, have been fitted. */
const SHAPE_LIMITS = [1, 4] as const;
/** The shape taken when nothing is known: Rayleigh. */
export const DEFAULT_WEIBULL_K = 2;

const LANCZOS = [
  676.5203681218851, -1259.1392167224028, 771.3234287776531, -176.6150291621406, 12.507343278686905,
  -0.13857109526572012, 9.984369578019572e-6, 1.5056327351493116e-7,
];

/** Gamma function for x > 0.5, to about 1e-14 (Lanczos' approximation, g = 7). */
export function gamma(x: number): number {
  const z = x - 1;
  let sum = 0.9999999999998099;
  for (let i = 0; i < LANCZOS.length; i++) sum += LANCZOS[i] / (z + i + 1);
  const t = z + LANCZOS.length - 0.5;
  return Math.sqrt(2 * Math.PI) * t ** (z + 0.5) * Math.exp(-t) * sum;
}

/** Scale c (m/s) of a distribution with this mean and shape. */
export const weibullScale = (meanSpeedMps: number, k: number): number => meanSpeedMps / gamma(1 + 1 / k);

/** Probability density of a speed, s/m. */
export const weibullDensity = (speedMps: number, c: number, k: number): number =>
  (k / c) * (speedMps / c) ** (k - 1) * Math.exp(-((speedMps / c) ** k));

/** Share of the time in which the wind reaches a speed. */
export function exceedanceShare(speedMps: number, meanSpeedMps: number, k: number): number {
  if (speedMps <= 0) return 1;
  if (meanSpeedMps <= 0) return 0;
  return Math.exp(-((speedMps / weibullScale(meanSpeedMps, k)) ** k));
}

/** Shape by moments, k = (standard deviation / mean)^-1.086 (Justus and others 1978), kept within 1 and 4. */
export function weibullShape(meanSpeedMps: number, deviationMps: number): number {
  if (!(meanSpeedMps > 0)) return DEFAULT_WEIBULL_K;
  if (!(deviationMps > 0)) return SHAPE_LIMITS[1];
  const k = (deviationMps / meanSpeedMps) ** -1.086;
  return Math.min(SHAPE_LIMITS[1], Math.max(SHAPE_LIMITS[0], k));
}
