import type { UnitSystem } from './model.ts';

/** Quantities as a person reads them. Inside everything is metric; only these functions and `parseMeasure` convert. */
const FEET_A_METRE = 1 / 0.3048;
const SQUARE_FEET_AN_ACRE = 43560;
const MILES_AN_HOUR_A_MPS = 3600 / 1609.344;

const trimmed = (value: number, digits: number): string => {
  const text = value.toFixed(digits);
  return Number(text) === 0 ? (0).toFixed(digits) : text;
};
const grouped = (value: number, digits: number): string =>
  value.toLocaleString('en-GB', { minimumFractionDigits: digits, maximumFractionDigits: digits });

/** 3.4 m or 11.2 ft; lengths over 100 without decimals. */
export function formatLength(lengthM: number, units: UnitSystem): string {
  if (!Number.isFinite(lengthM)) return '–';
  const value = units === 'metric' ? lengthM : lengthM * FEET_A_METRE;
  return `${trimmed(value, Math.abs(value) >= 100 ? 0 : 1)} ${lengthUnit(units)}`;
}
export const lengthUnit = (units: UnitSystem): string => (units === 'metric' ? 'm' : 'ft');
export const lengthIn = (lengthM: number, units: UnitSystem): number =>
  units === 'metric' ? lengthM : lengthM * FEET_A_METRE;
export const lengthFrom = (value: number, units: UnitSystem): number =>
  units === 'metric' ? value : value / FEET_A_METRE;

/** Water: whole millimetres, or inches. */
export const formatDepth = (depthMm: number, units: UnitSystem): string =>
  units === 'metric' ? `${trimmed(depthMm, 0)} mm` : `${trimmed(depthMm / 25.4, 1)} in`;

/** Square metres under a fifth of a hectare, hectares above; square feet and acres. */
export function formatArea(areaM2: number, units: UnitSystem): string {
  if (!Number.isFinite(areaM2)) return '–';
  if (units === 'metric')
    return areaM2 < 2000 ? `${grouped(areaM2, 0)} m²` : `${trimmed(areaM2 / 10_000, 2)} ha`;
  const squareFeet = areaM2 * FEET_A_METRE ** 2;
  return squareFeet < 10_000
    ? `${grouped(squareFeet, 0)} sq ft`
    : `${trimmed(squareFeet / SQUARE_FEET_AN_ACRE, 2)} acres`;
}

/** Land: hectares, or acres. */
export const landUnit = (units: UnitSystem): string => (units === 'metric' ? 'ha' : 'acres');
const landUnitM2 = (units: UnitSystem): number =>
  units === 'metric' ? 10_000 : SQUARE_FEET_AN_ACRE / FEET_A_METRE ** 2;
export const landIn = (areaM2: number, units: UnitSystem): number => areaM2 / landUnitM2(units);
export const landFrom = (value: number, units: UnitSystem): number => value * landUnitM2(units);

export function formatSpeed(speedMps: number, units: UnitSystem): string {
  return units === 'metric'
    ? `${trimmed(speedMps, 1)} m/s`
    : `${trimmed(speedMps * MILES_AN_HOUR_A_MPS, 0)} mph`;
}
export const speedUnit = (units: UnitSystem): string => (units === 'metric' ? 'm/s' : 'mph');
export const speedIn = (speedMps: number, units: UnitSystem): number =>
  units === 'metric' ? speedMps : speedMps * MILES_AN_HOUR_A_MPS;
export const speedFrom = (value: number, units: UnitSystem): number =>
  units === 'metric' ? value : value / MILES_AN_HOUR_A_MPS;

export const formatShare = (share: number): string =>
  Number.isFinite(share) ? `${Math.round(share * 100)} %` : '–';

/** 4.1 h; under a tenth of an hour in minutes. */
export function formatHours(hours: number): string {
  if (!Number.isFinite(hours)) return '–';
  return hours > 0 && hours < 0.1 ? `${Math.round(hours * 60)} min` : `${trimmed(hours, 1)} h`;
}
