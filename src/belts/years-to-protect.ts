/** From which year on a belt protects, read from how its lee grows. Pure. */
import type { Pace } from '../growth/height-curve.ts';
import type { FeatureId } from '../site/document.ts';

export const PACES = ['slow', 'usual', 'fast'] as const satisfies readonly Pace[];
/** The wind counts as cut from this share on. */
export const CUT_SHARE = 0.3;
/**
 * Useful protection: the wind is cut by that much at five heights of the 20-year belt, and on this share of the ground
 * of the field on which it will be at twenty years. Common practice, no source. The trade says 10 to 16 years from seed
 * for an alder belt; it thinks of the crowns of fruit trees as well, and this is the wind at 1.5 m.
 */
const USEFUL_SHARE = 2 / 3;
/** Less of the field than this is no protection of it. Common practice, no source. */
const LEAST_FIELD_SHARE = 0.02;
/** The place behind it that is watched, in heights of the belt at twenty years. */
export const WATCHED_H = 5;

/** What a belt does over the years, alone and in the wind from its side. */
export interface BeltYears {
  /** After the base year. */
  readonly years: readonly number[];
  /** Share of the field on which the wind is cut by 30 % or more, a value a year. */
  readonly protectedShare: Readonly<Record<Pace, readonly number[]>>;
  /** Share by which the wind is cut at five heights of the 20-year belt behind its middle. */
  readonly cutAtWatched: Readonly<Record<Pace, readonly number[]>>;
}

export interface BeltWhen extends BeltYears {
  readonly id: FeatureId;
  readonly label: string;
  /** The wind that is looked at: true azimuth it comes from. */
  readonly fromDeg: number;
  readonly plantedYear: number;
  /** Share of the field that it protects twenty years after planting, usual growth. */
  readonly fullShare: number;
  readonly watchedM: number;
  /** First year of useful protection, after the base year; null: not in the years looked at. */
  readonly usefulFrom: Readonly<Record<Pace, number | null>>;
  /** False: it never protects a part of the field worth naming. */
  readonly protects: boolean;
}

/** The first whole year at which a rising curve, read linearly between its years, has reached a value; null: never. */
export function firstYearAt(
  years: readonly number[],
  values: readonly number[],
  wanted: number,
): number | null {
  for (let i = 0; i < years.length; i++) {
    if (!(values[i] >= wanted)) continue;
    if (i === 0) return years[0];
    const part = (wanted - values[i - 1]) / (values[i] - values[i - 1]);
    return Math.ceil(years[i - 1] + part * (years[i] - years[i - 1]) - 1e-9);
  }
  return null;
}

export function usefulYears(
  { years, protectedShare, cutAtWatched }: BeltYears,
  fullShare: number,
): Pick<BeltWhen, 'usefulFrom' | 'protects'> {
  const protects = fullShare >= LEAST_FIELD_SHARE;
  const from = (pace: Pace) => {
    const ground = firstYearAt(years, protectedShare[pace], USEFUL_SHARE * fullShare);
    const watched = firstYearAt(years, cutAtWatched[pace], CUT_SHARE);
    return protects && ground !== null && watched !== null ? Math.max(ground, watched) : null;
  };
  return { protects, usefulFrom: { slow: from('slow'), usual: from('usual'), fast: from('fast') } };
}
