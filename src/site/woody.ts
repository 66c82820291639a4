import type { FeatureOf, SiteFeature } from './document.ts';

/** What grows and is cared for as one: a tree, a belt, a wood or block. */
export type Woody = FeatureOf<'tree' | 'belt' | 'block'>;

export const isWoody = (feature: SiteFeature): feature is Woody =>
  ['tree', 'belt', 'block'].includes(feature.properties.kind);
