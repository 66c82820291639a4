import type { MostLeafStates } from './shelter-phases.ts';

/** How finely the wind and the leaves of a year are taken apart. */
export interface Fineness {
  /** Directions sampled in each sector of an even rose. */
  readonly directionsASector: number;
  readonly leafStates: MostLeafStates;
}

export const USUAL_FINENESS: Fineness = { directionsASector: 5, leafStates: 6 };
/** While a hand moves something, and where many states of a site are looked at; the answer at rest is the usual one. */
export const QUICK_FINENESS: Fineness = { directionsASector: 2, leafStates: 4 };
