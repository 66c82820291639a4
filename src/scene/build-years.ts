import type { GrownThings, LightScene } from '../light/light-types.ts';
import type { SiteDocument } from '../site/document.ts';
import { lightScene, shadingThings } from './build-scene.ts';
import { LeafClasses } from './leaf-phases.ts';
import type { SceneOptions } from './options.ts';

/** The light engine's scenes of several years, in one. */
export interface LightYears {
  /** Everything but the things: ground, sky and sun of the base year, and the leaf classes of all years. */
  readonly scene: LightScene;
  readonly years: readonly GrownThings[];
}

/**
 * What the light engine needs for several years, or states of a year. They share the base year's sun: from one year to
 * another it differs by less than a leap day.
 * @param moments one or more, on the same ground and in the same weather.
 */
export function lightYears(document: SiteDocument, moments: readonly SceneOptions[]): LightYears {
  const leafClasses = new LeafClasses();
  const years = moments.map((moment): GrownThings => {
    const { crowns, prisms } = shadingThings(document, moment, leafClasses);
    return { crowns, prisms };
  });
  return { scene: lightScene(document, { ...moments[0], year: 0 }, leafClasses).scene, years };
}
