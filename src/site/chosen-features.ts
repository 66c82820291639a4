import type { LonLat } from '../geo/frame.ts';
import { BadInputError } from '../units/bad-input.ts';
import type { FeatureOf, Kind, SiteDocument, SiteFeature } from './document.ts';
import { placesOf } from './places.ts';
import type { FieldFeature } from './records/field.ts';

/** The features of one layout: what is common to all, and what belongs to it. Null: what is common alone. */
export const chosenFeatures = (document: SiteDocument, layout: string | null): readonly SiteFeature[] =>
  document.features.filter(({ properties }) => !properties.layout || properties.layout === layout);

export const isOfKind = <K extends Kind>(feature: SiteFeature, kind: K): feature is FeatureOf<K> =>
  feature.properties.kind === kind;

/** The features of one kind, in the order of the file. */
export const featuresOfKind = <K extends Kind>(features: readonly SiteFeature[], kind: K): FeatureOf<K>[] =>
  features.filter((feature): feature is FeatureOf<K> => isOfKind(feature, kind));

/** The field that is taken; where there is only one, that one; otherwise null. */
export function takenField(document: SiteDocument): FieldFeature | null {
  const fields = featuresOfKind(document.features, 'field');
  return fields.find((field) => field.properties.taken) ?? (fields.length === 1 ? fields[0] : null);
}

/**
 * The field of a name, whatever its case, or of an id.
 * @throws BadInputError when there is none; the sentence lists those there are.
 */
export function fieldNamed(document: SiteDocument, nameOrId: string): FieldFeature {
  const fields = featuresOfKind(document.features, 'field');
  const wanted = nameOrId.trim().toLowerCase();
  const found =
    fields.find((field) => field.properties.name?.trim().toLowerCase() === wanted) ??
    fields.find((field) => String(field.id).toLowerCase() === wanted);
  if (found) return found;
  const there =
    fields.length > 0
      ? `one of ${fields.map((field) => JSON.stringify(field.properties.name ?? String(field.id))).join(', ')}`
      : 'none, as no field is drawn';
  throw new BadInputError(`Field: there is none named ${JSON.stringify(nameOrId)}; expected ${there}.`);
}

export interface ComputeArea {
  /** The fields that are computed; empty where none is drawn. */
  readonly fields: readonly FieldFeature[];
  /** Rasters cover the box around these places. */
  readonly places: readonly LonLat[];
}

/**
 * What rasters must cover: the named field, or all fields, or, where no field is drawn, everything of the layout.
 * @throws BadInputError when there is no such field, or nothing is drawn at all.
 */
export function computeArea(
  document: SiteDocument,
  { field, layout = null }: { readonly field?: string; readonly layout?: string | null } = {},
): ComputeArea {
  const fields =
    field === undefined ? featuresOfKind(document.features, 'field') : [fieldNamed(document, field)];
  const covered = fields.length > 0 ? fields : chosenFeatures(document, layout);
  const places = covered.flatMap((feature) => [...placesOf(feature.geometry.coordinates)]);
  if (places.length === 0)
    throw new BadInputError(
      `Site ${JSON.stringify(document.site.name)}: nothing is drawn on it; expected at least a field or one other feature.`,
    );
  return { fields, places };
}
