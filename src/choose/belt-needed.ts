/**
 * Length of belt that would shelter what nothing shelters: a belt of this height cuts the wind by 30 % or more over ten
 * of its heights behind it, about the least that measured belts of middling density reach (windbreak tables in
 * wind/measured-belts.ts); across the wind, one beside another.
 */
const BELT_HEIGHT_M = 8;
const REACH_H = 10;

/** @param shelteredShare of the field that has shelter already, 0 to 1. */
export const beltNeededM = (areaM2: number, shelteredShare: number): number =>
  ((1 - shelteredShare) * areaM2) / (REACH_H * BELT_HEIGHT_M);
