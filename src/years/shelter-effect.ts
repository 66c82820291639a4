/**
 * How shelter speeds growth. Published: young pines in a wind tunnel grew shoots a fifth shorter in strong wind (Rees &
 * Grace 1980), so that shelter is worth up to 1.2; common practice, no source, speaks of up to twice. What a person
 * reckons with lies between 1 (no effect) and 2.
 */
export const PUBLISHED_EFFECT = 1.2;
export const PRACTICE_EFFECT = 2;

/** The full effect is reached where the wind of the growing season is cut by this share. Our guess: no source gives it. */
const FULL_SHELTER_CUT = 0.5;

/**
 * A season's growth against one in the open: rises from 1 as the wind of the growing season is cut, in proportion (our
 * guess), up to the effect of full shelter. Wind that is speeded up slows nothing.
 * @param cutShare 0 to 1; below 0 where it blows harder than in the open. @param fullEffect 1 to 2.
 */
export const growthSpeed = (cutShare: number, fullEffect: number): number =>
  1 + (fullEffect - 1) * Math.min(1, Math.max(0, cutShare) / FULL_SHELTER_CUT);
