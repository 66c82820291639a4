import type { ShelterOptions } from '../wind/shelter-types.ts';

/** Beaufort 6 begins here, m/s at 10 m. */
export const GALE_MPS = 10.8;
/** Every guess of the shelter engine is in use. */
export const SHELTER_OPTIONS: ShelterOptions = {
  obliqueWind: true,
  shortThings: true,
  youngBelts: true,
  endsAndGaps: true,
};
