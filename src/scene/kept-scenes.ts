import type { GrownThings } from '../light/light-types.ts';
import { lastAnswers } from '../numeric/last-answers.ts';
import type { SiteDocument } from '../site/document.ts';
import type { ShelterScene } from '../wind/shelter-types.ts';
import { lightScene, shadingThings, shelterScene } from './build-scene.ts';
import type { LightYears } from './build-years.ts';
import { growPlan } from './grow-plan.ts';
import type { GrownPlan } from './grown-plan.ts';
import { LeafClasses } from './leaf-phases.ts';
import type { SceneOptions } from './options.ts';

/** States of one site, each built once however often it is asked for. */
export interface KeptScenes {
  readonly grown: (moment: SceneOptions) => GrownPlan;
  readonly shelter: (moment: SceneOptions) => ShelterScene;
  /** As `lightYears` of the same moments, but for leaf classes that only other moments have. */
  readonly light: (moments: readonly SceneOptions[]) => LightYears;
}

/** So many besides those that are named beforehand. */
const MOST_OTHERS = 24;

/**
 * @param moments on the same ground and in the same weather; all that will be asked for, or the same with things gone: so
 * leaf classes are known from the start, and no answer hangs on which was asked for before.
 */
export function keepScenes(document: SiteDocument, moments: readonly SceneOptions[]): KeptScenes {
  const most = moments.length + MOST_OTHERS;
  const leafClasses = new LeafClasses();
  const thingsAt = lastAnswers(most, (moment: SceneOptions): GrownThings => {
    const { crowns, prisms } = shadingThings(document, moment, leafClasses);
    return { crowns, prisms };
  });
  for (const moment of moments) thingsAt(moment);
  const { scene } = lightScene(document, { ...moments[0], year: 0 }, leafClasses);
  return {
    grown: lastAnswers(most, (moment) => growPlan(document, moment)),
    shelter: lastAnswers(most, (moment) => shelterScene(document, moment).scene),
    light: (some) => ({ scene, years: some.map((moment) => thingsAt(moment)) }),
  };
}
