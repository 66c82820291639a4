import type { Geometry, LineString, Point, Polygon, Position } from 'geojson';
import { BadInputError } from '../../units/bad-input.ts';

/** A boundary, track or point from a file: two-dimensional, WGS 84 longitude and latitude, single parts only. */
export interface ImportedShape {
  readonly geometry: Point | LineString | Polygon;
  readonly name: string | null;
}

/**
 * Takes a geometry apart into single points, lines and polygons without heights.
 * @param toLonLat for files in another system.
 * @throws BadInputError naming the file and the feature when a position is not on the globe.
 */
export function shapesOf(
  geometry: Geometry | null,
  name: string | null,
  where: string,
  toLonLat: (position: Position) => Position = (position) => position,
): ImportedShape[] {
  const place = (position: Position): Position => {
    const [lonDeg, latDeg] = toLonLat(position);
    if (!(Math.abs(lonDeg) <= 180 && Math.abs(latDeg) <= 90)) {
      throw new BadInputError(
        `${where}: the position ${position[0]}, ${position[1]} is not a longitude (-180 to 180) and a latitude (-90 to 90).`,
      );
    }
    return [lonDeg, latDeg];
  };
  const line = (positions: Position[]): Position[] => withoutRepeats(positions.map(place));
  const polygon = (rings: Position[][]): ImportedShape[] => {
    const closed = rings.map((ring) => closedRing(line(ring))).filter((ring) => ring.length >= 4);
    return closed.length > 0 ? [{ geometry: { type: 'Polygon', coordinates: closed }, name }] : [];
  };
  const path = (positions: Position[]): ImportedShape[] => {
    const coordinates = line(positions);
    return coordinates.length > 1 ? [{ geometry: { type: 'LineString', coordinates }, name }] : [];
  };
  const point = (position: Position): ImportedShape[] => [
    { geometry: { type: 'Point', coordinates: place(position) }, name },
  ];
  switch (geometry?.type) {
    case 'Point':
      return point(geometry.coordinates);
    case 'MultiPoint':
      return geometry.coordinates.flatMap(point);
    case 'LineString':
      return path(geometry.coordinates);
    case 'MultiLineString':
      return geometry.coordinates.flatMap(path);
    case 'Polygon':
      return polygon(geometry.coordinates);
    case 'MultiPolygon':
      return geometry.coordinates.flatMap(polygon);
    case 'GeometryCollection':
      return geometry.geometries.flatMap((part) => shapesOf(part, name, where, toLonLat));
    default:
      return [];
  }
}

const same = (a: Position, b: Position): boolean => a[0] === b[0] && a[1] === b[1];
const withoutRepeats = (line: Position[]): Position[] =>
  line.filter((p, i) => i === 0 || !same(p, line[i - 1]));
const closedRing = (ring: Position[]): Position[] =>
  ring.length > 2 && !same(ring[0], ring[ring.length - 1]) ? [...ring, ring[0]] : ring;

/** @throws BadInputError when a file held nothing that can be used. */
export function someShapes(fileName: string, shapes: ImportedShape[]): ImportedShape[] {
  if (shapes.length > 0) return shapes;
  throw new BadInputError(`${fileName}: no point, line or area was found in it.`);
}
