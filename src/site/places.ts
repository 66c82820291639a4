import type { Position } from 'geojson';
import type { LonLat } from '../geo/frame.ts';
import { azimuthDeg, destination, distanceM } from '../geo/geodesic.ts';

/**
 * Coordinates of any GeoJSON shape carried from one place to another without turning or stretching: every position
 * keeps its true direction and distance from the anchor. Heights and further values of a position are kept.
 */
export function carriedCoordinates(coordinates: unknown, from: LonLat, to: LonLat): unknown {
  if (!isPosition(coordinates))
    return (coordinates as unknown[]).map((inner) => carriedCoordinates(inner, from, to));
  const place: LonLat = [coordinates[0], coordinates[1]];
  const [lon, lat] = destination(to, azimuthDeg(from, place), distanceM(from, place));
  return [lon, lat, ...coordinates.slice(2)];
}

/** The place so many metres to the true east and north of another. */
export const placeBeside = (from: LonLat, eastM: number, northM: number): LonLat =>
  destination(from, (Math.atan2(eastM, northM) * 180) / Math.PI, Math.hypot(eastM, northM));

/** The first position of any GeoJSON coordinates: what a feature is carried by. */
export function firstPlace(coordinates: unknown): LonLat {
  let inner = coordinates;
  while (!isPosition(inner)) inner = (inner as unknown[])[0];
  return [inner[0], inner[1]];
}

/** Where a note about a feature is put: a point itself, the middle corner of a line, the mean of an area's outer corners. */
export function middlePlace({ coordinates }: { readonly coordinates: unknown }): LonLat {
  if (isPosition(coordinates)) return firstPlace(coordinates);
  const [first] = coordinates as unknown[];
  if (isPosition(first)) {
    const line = [...placesOf(coordinates)];
    return line[Math.floor(line.length / 2)];
  }
  const ring = [...placesOf(first)].slice(1);
  const meanOf = (axis: 0 | 1) => ring.reduce((sum, place) => sum + place[axis], 0) / ring.length;
  return [meanOf(0), meanOf(1)];
}

/** Every position of any GeoJSON coordinates, in order. */
export function* placesOf(coordinates: unknown): Generator<LonLat> {
  if (isPosition(coordinates)) yield [coordinates[0], coordinates[1]];
  else if (Array.isArray(coordinates)) for (const inner of coordinates) yield* placesOf(inner);
}

const isPosition = (value: unknown): value is Position =>
  Array.isArray(value) && typeof value[0] === 'number';
