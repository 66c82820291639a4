import type { LonLat } from '../../geo/frame.ts';
import type { SiteFeature } from '../../site/document.ts';

/** A line or an area whose corners can be gone through one by one; of an area the outer ring. */
type Shape = SiteFeature['geometry'];
type Positions = readonly (readonly number[])[];

const openRing = (shape: Shape): Positions => {
  if (shape.type === 'Point') return [shape.coordinates];
  if (shape.type === 'LineString') return shape.coordinates;
  return shape.coordinates[0].slice(0, -1);
};

const withOpenRing = (shape: Shape, corners: Positions): Shape => {
  if (shape.type === 'Point') return { ...shape, coordinates: corners[0] } as Shape;
  if (shape.type === 'LineString') return { ...shape, coordinates: corners } as Shape;
  const ring = [...corners, corners[0]];
  return { ...shape, coordinates: [ring, ...shape.coordinates.slice(1)] } as Shape;
};

export const cornersOf = (shape: Shape): LonLat[] => openRing(shape).map(([lon, lat]) => [lon, lat]);

/** The corner elsewhere; heights and other values of the position are kept. */
export const withCornerAt = (shape: Shape, index: number, [lon, lat]: LonLat): Shape =>
  withOpenRing(
    shape,
    openRing(shape).map((corner, i) => (i === index ? [lon, lat, ...corner.slice(2)] : corner)),
  );

/** Without a corner; null when too few would be left. */
export function withoutCorner(shape: Shape, index: number): Shape | null {
  const corners = openRing(shape);
  const fewest = shape.type === 'Polygon' ? 3 : shape.type === 'LineString' ? 2 : 1;
  if (corners.length <= fewest) return null;
  return withOpenRing(
    shape,
    corners.filter((_, i) => i !== index),
  );
}

/** With a corner more, halfway to the next; its index is one higher. Null for a point and after a line's end. */
export function withCornerAfter(shape: Shape, index: number): Shape | null {
  const corners = openRing(shape);
  const next = shape.type === 'Polygon' ? corners[(index + 1) % corners.length] : corners[index + 1];
  if (shape.type === 'Point' || !next) return null;
  const here = corners[index];
  const middle = [(here[0] + next[0]) / 2, (here[1] + next[1]) / 2];
  return withOpenRing(shape, [...corners.slice(0, index + 1), middle, ...corners.slice(index + 1)]);
}
