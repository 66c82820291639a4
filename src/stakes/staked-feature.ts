import type { FeatureOf, SiteFeature } from '../site/document.ts';

const STAKED_KINDS = ['tree', 'belt', 'block', 'wall', 'building'] as const;
export type StakedKind = (typeof STAKED_KINDS)[number];
/** A feature whose shadow has a tip or an edge that can be watched. */
export type StakedFeature = FeatureOf<StakedKind>;

export const canBeStaked = (feature: SiteFeature): feature is StakedFeature =>
  (STAKED_KINDS as readonly string[]).includes(feature.properties.kind);
