import type { FeatureOf, SiteFeature } from '../site/document.ts';

const SHELTERING_KINDS = ['belt', 'wall'] as const;
export type ShelteringKind = (typeof SHELTERING_KINDS)[number];
/** A line behind which the wind can be read at so many heights. */
export type ShelteringFeature = FeatureOf<ShelteringKind>;
/** What they are called where one is asked for. */
export const SHELTERING_WORDS = 'belt, wall, fence or net';

export const canShelter = (feature: SiteFeature): feature is ShelteringFeature =>
  (SHELTERING_KINDS as readonly string[]).includes(feature.properties.kind);
