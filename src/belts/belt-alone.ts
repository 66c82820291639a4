/** A belt by itself in the wind that it is for: what it will protect, whatever else stands. */
import { shelterScene } from '../scene/build-scene.ts';
import type { SceneOptions } from '../scene/options.ts';
import type { FeatureId, SiteDocument } from '../site/document.ts';
import { USUAL_SHELTER_OPTIONS } from '../wind/shelter-guesses.ts';
import type { ShelterScene } from '../wind/shelter-types.ts';

/** Trees are left out, and so is the lie of the land: the answer is the belt's. */
export const ALONE_OPTIONS = { ...USUAL_SHELTER_OPTIONS, scatteredTrees: false, landform: false } as const;

/**
 * The scene of some belts, nets and walls alone, with one wind all year; null while none of them stands.
 * @param fromDeg where that wind comes from, clockwise from true north.
 */
export function aloneScene(
  document: SiteDocument,
  options: SceneOptions,
  ids: readonly FeatureId[],
  fromDeg: number,
): ShelterScene | null {
  const only = {
    ...document,
    features: document.features.filter(
      ({ id, properties }) => ids.includes(id) || properties.kind === 'field',
    ),
  };
  const { scene } = shelterScene(only, { ...options, felled: null });
  if (scene.barriers.length === 0) return null;
  // Its speed does not matter: the share of it that is left is asked for.
  const wind = { calmShare: 0, sectors: [{ fromDeg, frequency: 1, meanSpeedMps: 5, weibullK: 2 }] };
  return { ...scene, climate: { ...scene.climate, growing: wind, rest: wind } };
}
