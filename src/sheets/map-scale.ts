import type { LengthUnit } from './plan-input.ts';

/** Scales a person can pick, as 1 : N; larger ones are only used to fit a large site. */
export const MAP_SCALES = [50, 100, 200, 250, 500, 1000, 1250, 2000, 2500, 5000] as const;
const FITTING_SCALES = [...MAP_SCALES, 10_000, 20_000, 25_000, 50_000, 100_000];

/** The largest map (smallest N) on which ground of this size fits the frame. */
export function scaleThatFits(
  ground: { widthM: number; heightM: number },
  frame: { widthMm: number; heightMm: number },
): number {
  const needed = Math.max((ground.widthM * 1000) / frame.widthMm, (ground.heightM * 1000) / frame.heightMm);
  return FITTING_SCALES.find((scale) => scale >= needed) ?? Math.ceil(needed / 100_000) * 100_000;
}

export const M_PER_FOOT = 0.3048;

/** A scale bar's length in its own unit: the roundest that is no longer on paper than allowed. */
export function scaleBarLength(
  scale: number,
  unit: LengthUnit,
  longestMm: number,
): { length: number; parts: number; lengthMm: number } {
  const unitM = unit === 'm' ? 1 : M_PER_FOOT;
  const longest = (longestMm * scale) / 1000 / unitM;
  const power = 10 ** Math.floor(Math.log10(longest));
  const lead = longest / power >= 5 ? 5 : longest / power >= 2 ? 2 : 1;
  const length = lead * power;
  return { length, parts: lead === 2 ? 4 : 5, lengthMm: (length * unitM * 1000) / scale };
}
