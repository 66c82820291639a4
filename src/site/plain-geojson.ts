import { BadInputError } from '../units/bad-input.ts';

/** The file is sound GeoJSON but not a site: a screen offers to import it, a command line prints the sentence. */
export class PlainGeoJsonError extends BadInputError {
  /** The parsed GeoJSON: a collection, a feature or a bare geometry. */
  readonly geojson: Readonly<Record<string, unknown>>;
  constructor(fileName: string, geojson: Readonly<Record<string, unknown>>) {
    super(
      `${fileName}: the file is GeoJSON without a site record; expected a member "site", or import its shapes as fields, belts or paths.`,
    );
    this.name = 'PlainGeoJsonError';
    this.geojson = geojson;
  }
}

const GEOMETRY_TYPES = [
  'Point',
  'MultiPoint',
  'LineString',
  'MultiLineString',
  'Polygon',
  'MultiPolygon',
  'GeometryCollection',
];
/** True for the outer form of any GeoJSON object of RFC 7946. */
export function isGeoJson(value: Readonly<Record<string, unknown>>): boolean {
  if (value.type === 'FeatureCollection') return Array.isArray(value.features);
  if (value.type === 'Feature') return 'geometry' in value;
  return GEOMETRY_TYPES.includes(String(value.type));
}
