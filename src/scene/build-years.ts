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
 * What the light engine needs for several years. They share the base year's sun: from one year to another it differs by
 * less than a leap day.
 * @param years after the base year.
 */
export function lightYears(
  document: SiteDocument,
  options: SceneOptions,
  years: readonly number[],
): LightYears {
  const leafClasses = new LeafClasses();
  const things = years.map((year): GrownThings => {
    const { crowns, prisms } = shadingThings(document, { ...options, year }, leafClasses);
    return { crowns, prisms };
  });
  return { scene: lightScene(document, { ...options, year: 0 }, leafClasses).scene, years: things };
}
