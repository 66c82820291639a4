import { M_PER_FOOT } from './map-scale.ts';
import type { PointMm } from './page-model.ts';
import type { LengthUnit } from './plan-input.ts';

/** How large a strip is drawn: millimetres on paper, pixels on the screen. */
export interface StripSizes {
  /** Length of one degree, along and up. */
  readonly perDeg: number;
  readonly text: number;
  /** Width of the thinnest line. */
  readonly pen: number;
}

/** Where a direction lies on the strip. */
export type OnStrip = (azimuthDeg: number, altitudeDeg: number) => PointMm;

/** A fist at arm's length, degrees: a rule of thumb, good to a degree or two (common practice, no source). */
export const FIST_DEG = 10;

/** Degrees in words and in fists: "32° (3 fists)". */
export function fistWords(altitudeDeg: number): string {
  const halves = Math.round((altitudeDeg / FIST_DEG) * 2) / 2;
  const fists =
    halves === 0
      ? 'under a quarter of a fist'
      : halves === 0.5
        ? 'half a fist'
        : halves === 1
          ? '1 fist'
          : `${Math.floor(halves)}${halves % 1 ? '½' : ''} fists`;
  return `${Math.round(altitudeDeg)}° (${fists})`;
}

/** A length said in passing: "0.1 m", "36 ft"; with a decimal where it is short. */
export function lengthWords(lengthM: number, unit: LengthUnit): string {
  const length = unit === 'm' ? lengthM : lengthM / M_PER_FOOT;
  return `${length < 3 ? Number(length.toFixed(1)) : Math.round(length)} ${unit}`;
}
