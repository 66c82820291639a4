import { difference, featureCollection, kinks, polygon, union } from '@turf/turf';
import type { MultiPolygon, Polygon, Position } from 'geojson';
import type { LonLat } from './frame.ts';

/** The first place where a polygon's outline crosses itself; null when it does not. Rings are closed, lon/lat. */
export function selfCrossing(rings: readonly (readonly (readonly number[])[])[]): LonLat | null {
  const coordinates = rings.map((ring) => ring.map((position): Position => [position[0], position[1]]));
  const crossing = kinks(polygon(coordinates)).features[0];
  return crossing ? [crossing.geometry.coordinates[0], crossing.geometry.coordinates[1]] : null;
}

type Area = Polygon | MultiPolygon;
const asFeature = (geometry: Area) => ({ type: 'Feature' as const, properties: {}, geometry });

/** What is left of an area when others are cut out; null when nothing is left. */
export function areaLess(area: Area, others: readonly Area[]): Area | null {
  if (others.length === 0) return area;
  return difference(featureCollection([area, ...others].map(asFeature)))?.geometry ?? null;
}

/** Areas melted into one; null for none. */
export function areasTogether(areas: readonly Area[]): Area | null {
  if (areas.length < 2) return areas[0] ?? null;
  return union(featureCollection(areas.map(asFeature)))?.geometry ?? null;
}
