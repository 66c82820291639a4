import type { Barrier } from '../crowns/barrier.ts';
import { porosityAtLeafShare } from './shelter-phases.ts';
import type { ShelterOptions } from './shelter-types.ts';

/** Least cosine between the wind and the normal of a belt that is used; beyond 75 degrees off the belt is end-on. */
const LEAST_COSINE = 0.25;
/** The wind beside an end is up to 20 % faster (Reid & Bird 1990; no extent is published). */
const MOST_GAIN = 0.2;
/** A short thing shelters in full to 1.4 times its length across the wind, then in inverse proportion. */
const FULL_SHELTER_LENGTHS = 1.4;

/**
 * Beside a belt that the wind blows along, reductions persist to about four heights (Cleugh 1997; Burke 1998, as an
 * extension page gives them). How large they are is not published.
 */
export const BESIDE_H = 4;
/** Our guess: right beside the belt half of what the belt takes at its own line from a wind that meets it square. */
const BESIDE_SHARE = 0.5;

/** Cosine between the wind and the normal of a straight piece. Our guess: width / cos and p^(1 / cos). */
export function obliqueCosine(acrossM: number, lengthM: number, options: ShelterOptions): number {
  if (!options.obliqueWind || !(lengthM > 0)) return 1;
  return Math.min(1, Math.max(LEAST_COSINE, Math.abs(acrossM) / lengthM));
}

/**
 * Porosity the wind meets: the foliage's, at the leaf share and along the slanting path, opened by the share of the
 * height that is free below a raised foot (our guess).
 */
export function metPorosity(
  barrier: Barrier,
  leafShare: number,
  cosine: number,
  heightM: number,
  options: ShelterOptions,
): number {
  const straight = porosityAtLeafShare(barrier.porosityOn, barrier.porosityOff, leafShare);
  const foliage = cosine < 1 ? straight ** (1 / cosine) : straight;
  const footM = options.raisedFeet ? barrier.baseM : 0;
  const open = heightM > 0 ? Math.min(1, Math.max(0, footM / heightM)) : 1;
  return foliage + (1 - foliage) * open;
}

/** Our guess for young belts: nothing at or below the reading height, everything from twice that height. */
export function youngStrength(heightM: number, readingHeightM: number, options: ShelterOptions): number {
  if (!options.youngBelts || readingHeightM <= 0) return 1;
  return Math.min(1, Math.max(0, heightM / readingHeightM - 1));
}

/** Distance to which a thing of this connected length shelters in full (our guess). */
export const shelterReachM = (lengthM: number, options: ShelterOptions): number =>
  options.shortThings ? FULL_SHELTER_LENGTHS * lengthM : Number.POSITIVE_INFINITY;

/**
 * What of a belt's deficit at its own line stands right beside a straight piece of it: half where the wind blows along
 * it, nothing from the angle on at which the belt counts as met by the wind (our guess).
 */
export const besideStrength = (acrossM: number, lengthM: number, options: ShelterOptions): number =>
  options.parallelWind ? BESIDE_SHARE * Math.max(0, 1 - Math.abs(acrossM) / lengthM / LEAST_COSINE) : 0;

/** Share of an end's speed-up: a thing that is narrower than tall turns less air aside (our guess). */
export const endBreadth = (lengthM: number, heightM: number, options: ShelterOptions): number =>
  options.shortThings ? Math.min(1, lengthM / heightM) : 1;

/** Gain of the wind right at an end that is worth so much of (1 - p); how far it reaches is in the kernel. */
export const endGain = (strength: number): number => MOST_GAIN * strength;
