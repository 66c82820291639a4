import { profileRatio } from '../wind/profile.ts';
import { METER_HEIGHT_M } from './spot-plan.ts';

/** How long gusts hang together at chest height over fields, s. Common practice, no source (5 to 20 s are met with). */
const GUST_SCALE_S = 10;
/** Two like hand meters that were swapped half-way still differ by this share of what they read, and by this much at least, m/s. Common practice, no source. */
const METER_SHARE = 0.03;
const METER_LEAST_MPS = 0.1;
/** Nine of ten values of a normal distribution lie within so many standard deviations. */
const NINE_OF_TEN = 1.645;
/** Over land as rough as hedges the logarithmic profile begins above a meter at chest height, m. */
const MOST_ROUGHNESS_M = 0.5;

/** Open wind at the meters' height from that at 10 m, m/s. */
export const openAtMeters = (speedMps: number, roughnessM: number): number =>
  speedMps * profileRatio(10, METER_HEIGHT_M, Math.min(MOST_ROUGHNESS_M, roughnessM));

/** One standard deviation of a mean of the open wind over so many minutes, as a share of that wind. */
function gustShare(minutes: number, roughnessM: number): number {
  // Standard deviation over mean near the ground in neutral air is 1 / ln(z / z0).
  const intensity = 1 / Math.log(METER_HEIGHT_M / Math.min(MOST_ROUGHNESS_M, roughnessM));
  return intensity * Math.sqrt((2 * GUST_SCALE_S) / (60 * minutes));
}

/**
 * By how much the ratio of two meters' means may be off from the true share, nine times of ten, to either side. The
 * variance of a mean over T is 2 sigma^2 tau / T (Lenschow, Mann & Kristensen 1994, Journal of Atmospheric and Oceanic
 * Technology 11, 661-673); gusts at the two places do not belong together, and behind a belt they are taken to be as
 * strong as in the open though the mean is less.
 */
export function metersSpread(share: number, openMps: number, minutes: number, roughnessM: number): number {
  const gusts = NINE_OF_TEN * gustShare(minutes, roughnessM) * Math.hypot(1, share);
  const meters = METER_SHARE * share + METER_LEAST_MPS / openMps;
  return Math.hypot(gusts, meters);
}

/** The same as one standard deviation. */
export const metersDeviation = (...asked: Parameters<typeof metersSpread>): number =>
  metersSpread(...asked) / NINE_OF_TEN;
