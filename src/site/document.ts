import type { BeltFeature } from './records/belt.ts';
import type { BlockFeature } from './records/block.ts';
import type { BuildingFeature } from './records/building.ts';
import type { FieldFeature } from './records/field.ts';
import type { MeasureFeature } from './records/measure.ts';
import type { PatchFeature } from './records/patch.ts';
import type { PlantingFeature } from './records/planting.ts';
import type { SiteRecord } from './records/site.ts';
import type { TreeFeature } from './records/tree.ts';
import type { WallFeature } from './records/wall.ts';
import type { KeepOutFeature, PathFeature, ServiceFeature } from './records/way.ts';

/** A feature of a kind this version knows. */
export type SiteFeature =
  | FieldFeature
  | BeltFeature
  | BlockFeature
  | TreeFeature
  | BuildingFeature
  | WallFeature
  | PatchFeature
  | PlantingFeature
  | PathFeature
  | KeepOutFeature
  | ServiceFeature
  | MeasureFeature;

export type Kind = SiteFeature['properties']['kind'];
export type FeatureOf<K extends Kind> = Extract<SiteFeature, { properties: { kind: K } }>;
export type FeatureId = SiteFeature['id'];

/** A feature of a kind this version does not know: kept as it was read, drawn nowhere. */
export interface OtherFeature {
  readonly type: 'Feature';
  readonly id?: FeatureId;
  readonly [member: string]: unknown;
}

/** The whole site: an RFC 7946 collection with the foreign member `site`. Never mutated: actions return a new one. */
export interface SiteDocument {
  readonly type: 'FeatureCollection';
  readonly site: SiteRecord;
  readonly features: readonly SiteFeature[];
  /** Features of kinds this version does not know, kept for the round trip. */
  readonly otherFeatures?: readonly OtherFeature[];
  /** Foreign members of the collection, kept. */
  readonly [foreign: string]: unknown;
}
