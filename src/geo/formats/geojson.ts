import type { Feature, Geometry, Position } from 'geojson';
import proj4 from 'proj4';
import { BadInputError } from '../../units/bad-input.ts';
import { proj4OfEpsg, unknownSystem } from './epsg.ts';
import { type ImportedShape, shapesOf, someShapes } from './imported-shape.ts';

const GEOMETRIES = new Set([
  'Point',
  'MultiPoint',
  'LineString',
  'MultiLineString',
  'Polygon',
  'MultiPolygon',
  'GeometryCollection',
]);

/**
 * Shapes of a GeoJSON file: a collection, a feature or a bare geometry (RFC 7946). The `crs` member of the 2008 format,
 * which some programs still write, is honoured.
 */
export function readGeoJson(fileName: string, text: string): ImportedShape[] {
  const json = parse(fileName, text);
  const features = featuresOf(json);
  if (!features) {
    throw new BadInputError(
      `${fileName}: this is JSON but not GeoJSON; expected a FeatureCollection, a Feature or a geometry.`,
    );
  }
  const toLonLat = lonLatOf(fileName, json);
  return someShapes(
    fileName,
    features.flatMap((feature, i) => {
      if (typeof feature !== 'object' || feature === null) return [];
      const given = feature.properties?.name ?? feature.properties?.Name ?? feature.properties?.NAME;
      const name = typeof given === 'string' && given.trim() !== '' ? given.trim() : null;
      const where = `${fileName}, ${name ? `"${name}"` : `feature ${i + 1}`}`;
      try {
        return shapesOf(feature.geometry, name, where, toLonLat);
      } catch (error) {
        if (error instanceof BadInputError) throw error;
        throw new BadInputError(`${where}: its coordinates do not fit its geometry type.`);
      }
    }),
  );
}

function parse(fileName: string, text: string): Record<string, unknown> {
  let json: unknown;
  try {
    json = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    throw new BadInputError(`${fileName}: this is not JSON, or it is cut short; expected a GeoJSON file.`);
  }
  return typeof json === 'object' && json !== null ? (json as Record<string, unknown>) : {};
}

function featuresOf(json: Record<string, unknown>): Feature<Geometry | null>[] | null {
  if (json.type === 'FeatureCollection' && Array.isArray(json.features)) {
    return json.features as Feature<Geometry | null>[];
  }
  if (json.type === 'Feature') return [json as unknown as Feature<Geometry | null>];
  if (typeof json.type === 'string' && GEOMETRIES.has(json.type)) {
    return [{ type: 'Feature', properties: {}, geometry: json as unknown as Geometry }];
  }
  return null;
}

function lonLatOf(fileName: string, json: Record<string, unknown>): (position: Position) => Position {
  const named = (json.crs as { properties?: { name?: unknown } } | undefined)?.properties?.name;
  if (typeof named !== 'string' || /CRS84/i.test(named)) return (position) => position;
  const code = Number(/EPSG:+(?:[\d.]*:)?(\d+)$/i.exec(named)?.[1]);
  const system = proj4OfEpsg(code);
  if (!system) throw unknownSystem(fileName, named);
  const converter = proj4('+proj=longlat +datum=WGS84 +no_defs', system);
  return (position) => converter.inverse([position[0], position[1]]);
}
