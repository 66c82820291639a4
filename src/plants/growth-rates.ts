import type { HeightCurve } from '../growth/height-curve.ts';

/**
 * Rates and shapes of height curves by how quickly a plant comes up. Fitted to the usual order of garden and forest
 * practice; common practice, no source. Share of the final height at 10, 20 and 40 years:
 * very fast 0.56 0.86 0.99; fast 0.38 0.69 0.93; medium 0.25 0.50 0.80; slow 0.18 0.38 0.67;
 * orchard 0.59 0.86 0.98; shrub 0.76 0.95 1.00 (0.49 at 5 years).
 */
const RATES = {
  'very fast': { ratePerYear: 0.12, shape: 1.6 },
  fast: { ratePerYear: 0.075, shape: 1.5 },
  medium: { ratePerYear: 0.05, shape: 1.5 },
  slow: { ratePerYear: 0.035, shape: 1.4 },
  orchard: { ratePerYear: 0.11, shape: 1.3 },
  shrub: { ratePerYear: 0.16, shape: 1.2 },
} as const;
export const GROWTH_RATES = Object.keys(RATES) as readonly GrowthRate[];
export type GrowthRate = keyof typeof RATES;

export const curveOfRate = (rate: GrowthRate, maxHeightM: number): HeightCurve => ({
  maxHeightM,
  ...RATES[rate],
});
