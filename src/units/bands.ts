import { BadInputError } from './bad-input.ts';

/** Named ranges in which maps are inked. Thresholds are defaults of the trade's own words (common practice, no source). */
export interface Band {
  readonly name: string;
  /** Lower limit of the band, inclusive, in the band set's own unit. */
  readonly from: number;
  readonly ink: string;
}
export interface BandSet {
  readonly quantity: string;
  readonly unit: string;
  /** Rising by `from`. */
  readonly bands: readonly Band[];
}

/** Share of open light, 0 to 1. */
export const LIGHT_BANDS: BandSet = {
  quantity: 'Light, share of open sky',
  unit: 'share',
  bands: [
    { name: 'deep shade', from: 0, ink: '#3f5254' },
    { name: 'half shade', from: 0.3, ink: '#68806e' },
    { name: 'light shade', from: 0.5, ink: '#9eac7c' },
    { name: 'fruiting light', from: 0.68, ink: '#d3cc96' },
    { name: 'open', from: 0.84, ink: '#f4ecc6' },
  ],
};

/** Lower limits of all light bands but the darkest, which begins at 0. */
export const LIGHT_BAND_LIMITS: readonly number[] = LIGHT_BANDS.bands.slice(1).map(({ from }) => from);

/**
 * Why limits cannot part the light into bands, in one sentence; null: they can.
 * @param limits shares of open light at which half shade, light shade, fruiting light and open begin.
 */
export function lightLimitsProblem(limits: readonly number[]): string | null {
  const names = LIGHT_BANDS.bands.slice(1).map(({ name }) => name);
  if (limits.length !== names.length)
    return `The light has ${limits.length} limits between its bands; expected ${names.length}, for ${names.join(', ')}.`;
  const percent = (share: number) => `${Number((share * 100).toFixed(1))} %`;
  for (let i = 0; i < limits.length; i++) {
    const least = i === 0 ? 0 : limits[i - 1];
    if (limits[i] > least && limits[i] < 1) continue;
    const after = i === 0 ? '0 %' : `${percent(least)}, where ${names[i - 1]} begins,`;
    return `${names[i][0].toUpperCase()}${names[i].slice(1)} begins at ${percent(limits[i])}; expected more than ${after} and less than 100 %.`;
  }
  return null;
}

/**
 * The light bands with limits of one's own.
 * @throws BadInputError when the limits do not rise between 0 and 1.
 */
export function lightBandsFrom(limits: readonly number[]): BandSet {
  const problem = lightLimitsProblem(limits);
  if (problem) throw new BadInputError(problem);
  return {
    ...LIGHT_BANDS,
    bands: LIGHT_BANDS.bands.map((band, i) => (i === 0 ? band : { ...band, from: limits[i - 1] })),
  };
}

/** Direct sun, hours a day. Limits after Penn State Extension, "Planting in Sun or Shade" (2, 4, 6 h). */
export const SUN_HOUR_BANDS: BandSet = {
  quantity: 'Direct sun, hours a day',
  unit: 'h/day',
  bands: [
    { name: 'under 2', from: 0, ink: '#3f5254' },
    { name: '2 to 4', from: 2, ink: '#68806e' },
    { name: '4 to 6', from: 4, ink: '#9eac7c' },
    { name: '6 to 8', from: 6, ink: '#d3cc96' },
    { name: 'over 8', from: 8, ink: '#f4ecc6' },
  ],
};

/** Daily light integral, mol m-2 d-1. */
export const DAILY_LIGHT_BANDS: BandSet = {
  quantity: 'Daily light for plants',
  unit: 'mol m⁻² d⁻¹',
  bands: [
    { name: 'under 6', from: 0, ink: '#3f5254' },
    { name: '6 to 12', from: 6, ink: '#68806e' },
    { name: '12 to 18', from: 12, ink: '#9eac7c' },
    { name: '18 to 30', from: 18, ink: '#d3cc96' },
    { name: 'over 30', from: 30, ink: '#f4ecc6' },
  ],
};

/** Share by which the wind is cut, 0 to 1 (1 - share of open wind). */
export const WIND_CUT_BANDS: BandSet = {
  quantity: 'Wind cut by',
  unit: 'share',
  bands: [
    { name: 'open', from: -1, ink: '#f3f1e8' },
    { name: 'a little', from: 0.05, ink: '#d9e4e6' },
    { name: 'some', from: 0.15, ink: '#b0cad2' },
    { name: 'good', from: 0.3, ink: '#7ba5b4' },
    { name: 'strong', from: 0.5, ink: '#477a8e' },
    { name: 'very strong', from: 0.7, ink: '#24536a' },
  ],
};

/** Slope of the ground, degrees. */
export const SLOPE_BANDS: BandSet = {
  quantity: 'Slope of the ground',
  unit: '°',
  bands: [
    { name: 'level', from: 0, ink: '#f3eee0' },
    { name: 'gentle', from: 3, ink: '#e0d3b8' },
    { name: 'moderate', from: 7, ink: '#c4ab86' },
    { name: 'steep', from: 12, ink: '#9c7a58' },
    { name: 'very steep', from: 20, ink: '#6b4d38' },
  ],
};

/** Depth to which cold air would fill the ground before it spills over, m. Limits are our choice. */
export const COLD_AIR_BANDS: BandSet = {
  quantity: 'Cold air, how deep it would lie',
  unit: 'm',
  bands: [
    { name: 'none', from: 0, ink: '#f4f2ea' },
    { name: 'shallow', from: 0.3, ink: '#cfd2dd' },
    { name: 'deep', from: 1, ink: '#989fb8' },
    { name: 'very deep', from: 3, ink: '#5a6285' },
  ],
};

/** Index of the band a value falls in; -1 for NaN. */
export function bandOf(set: BandSet, value: number): number {
  if (Number.isNaN(value)) return -1;
  let index = 0;
  for (let i = 1; i < set.bands.length; i++) if (value >= set.bands[i].from) index = i;
  return index;
}
