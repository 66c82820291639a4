import type { SiteDocument, SiteFeature } from './document.ts';

/**
 * Whether a person can still choose to do without it: a planned tree, belt or block, a planting, a net or wall that is
 * to be put up in a year of the plan.
 */
export function isPlannedFeature({ properties }: SiteFeature, baseYear: number): boolean {
  switch (properties.kind) {
    case 'tree':
    case 'belt':
    case 'block':
      return properties.status === 'planned';
    case 'wall':
      return properties.fromYear !== undefined && properties.fromYear >= baseYear;
    case 'planting':
      return true;
    default:
      return false;
  }
}

/** What is planned and common to all layouts. */
export const commonPlanned = (document: SiteDocument): SiteFeature[] =>
  document.features.filter(
    (feature) => !feature.properties.layout && isPlannedFeature(feature, document.site.baseYear),
  );
