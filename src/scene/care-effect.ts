import type { Pace } from '../growth/height-curve.ts';
import type { SiteDocument } from '../site/document.ts';
import type { Woody } from '../site/woody.ts';
import { heightAt } from './care-list.ts';

/** Height by year after the base year, from 0, m, at each pace; null where the place is empty. */
export type HeightsByYear = Readonly<Record<Pace, readonly (number | null)[]>>;

/** What care does to the height of one plant. */
export interface CareEffect {
  readonly cared: HeightsByYear;
  readonly uncared: HeightsByYear;
}

/** Heights of a plant with its care and without any, in years 0 to `lastYear`. */
export function careEffect(document: SiteDocument, feature: Woody, lastYear: number): CareEffect {
  const { care: _, ...properties } = feature.properties;
  const heights = (plant: Woody): HeightsByYear => {
    const at = (pace: Pace) =>
      Array.from({ length: lastYear + 1 }, (_, year) =>
        heightAt(document, plant, document.site.baseYear + year, pace),
      );
    return { slow: at('slow'), usual: at('usual'), fast: at('fast') };
  };
  return { cared: heights(feature), uncared: heights({ ...feature, properties } as Woody) };
}
