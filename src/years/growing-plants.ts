import type { SceneOptions } from '../scene/options.ts';
import { standingAt } from '../scene/things.ts';
import { chosenFeatures, isOfKind } from '../site/chosen-features.ts';
import type { FeatureId, FeatureOf, SiteDocument, SiteFeature } from '../site/document.ts';

export type Woody = FeatureOf<'tree' | 'belt' | 'block'>;

/** Years after the base year that are followed. */
export const LAST_YEAR = 40;
export const YEARS: readonly number[] = Array.from({ length: LAST_YEAR + 1 }, (_, year) => year);
/** Years at which a plant is looked at to see whether it grows at all. */
const LOOKS = [0, 1, 3, 6, 10, 20, 30, LAST_YEAR];

const isWoody = (feature: SiteFeature): feature is Woody =>
  isOfKind(feature, 'tree') || isOfKind(feature, 'belt') || isOfKind(feature, 'block');

/** The trees, belts and blocks of a layout whose height changes in some year. */
export function growingPlants(document: SiteDocument, options: SceneOptions): Woody[] {
  const first = new Map<FeatureId, number>();
  const growing = new Set<FeatureId>();
  for (const year of LOOKS) {
    const { trees, breaks } = standingAt(document, { ...options, year });
    for (const { feature, stand } of [...trees, ...breaks]) {
      const before = first.get(feature.id);
      if (before === undefined) first.set(feature.id, stand.heightM);
      else if (before !== stand.heightM) growing.add(feature.id);
    }
  }
  return chosenFeatures(document, options.layout).filter(
    (feature): feature is Woody => isWoody(feature) && growing.has(feature.id),
  );
}
