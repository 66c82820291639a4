import { type SiteRecord, siteDefaults } from '../site/records/site.ts';

/**
 * How shelter speeds growth. Published: young pines in a wind tunnel grew shoots a fifth shorter in strong wind (Rees &
 * Grace 1980), so that shelter is worth up to 1.2; common practice, no source, speaks of up to twice. What a person
 * reckons with lies between 1 (no effect) and 2.
 */
/** The full effect is reached where the wind of the growing season is cut by this share. Our guess: no source gives it. */
const FULL_SHELTER_CUT = 0.5;

/**
 * A season's growth against one in the open: rises from 1 as the wind of the growing season is cut, in proportion (our
 * guess), up to the effect of full shelter. Wind that is speeded up slows nothing.
 * @param cutShare 0 to 1; below 0 where it blows harder than in the open. @param fullEffect 1 to 2.
 */
export const growthSpeed = (cutShare: number, fullEffect: number): number =>
  1 + (fullEffect - 1) * Math.min(1, Math.max(0, cutShare) / FULL_SHELTER_CUT);

/** How much shelter speeds growth on a site: as it is reckoned with, and the most that is thought possible. */
export interface ShelterEffect {
  readonly usual: number;
  readonly most: number;
}

export function shelterEffectOf({ shelterEffect }: SiteRecord): ShelterEffect {
  const { usual, most } = siteDefaults.shelterEffect;
  const reckonedWith = shelterEffect?.usual ?? usual;
  return { usual: reckonedWith, most: Math.max(reckonedWith, shelterEffect?.most ?? most) };
}
