import { type Frame, type LonLat, toLocal } from '../geo/frame.ts';
import { azimuthDeg } from '../geo/geodesic.ts';
import { chosenFeatures, takenField } from '../site/chosen-features.ts';
import type { FeatureId, FeatureOf, SiteDocument, SiteFeature } from '../site/document.ts';
import { directionWord } from '../units/compass.ts';

/** A point that a person can find outside, with the letter it has on the sketch. */
export interface FindablePoint {
  readonly letter: string;
  /** "north-west corner of Pound Field", "south post of the gate". */
  readonly words: string;
  readonly lonLat: LonLat;
  readonly of: FeatureId;
}

/** A straight side of a field between two of its corners, as indices of points. */
export type FieldSide = readonly [number, number];

/** Where a boundary turns by less than this it has no corner that could be found, degrees. */
const CORNER_DEG = 12;

/** The corners of a ring, clockwise from the one that lies furthest north-west. */
function cornersOf(frame: Frame, ring: readonly (readonly number[])[]): LonLat[] {
  const places = ring.slice(0, -1).map(([lon, lat]): LonLat => [lon, lat]);
  const turning = places.filter((place, i) => {
    const before = places[(i + places.length - 1) % places.length];
    const after = places[(i + 1) % places.length];
    const turn = azimuthDeg(place, after) - azimuthDeg(before, place);
    return Math.abs(((turn + 540) % 360) - 180) >= CORNER_DEG;
  });
  const corners = turning.length >= 3 ? turning : places;
  const local = corners.map((corner) => toLocal(frame, corner));
  const doubleArea = local.reduce((sum, [x, y], i) => {
    const [nx, ny] = local[(i + 1) % local.length];
    return sum + x * ny - nx * y;
  }, 0);
  const clockwise = doubleArea < 0 ? corners : corners.toReversed();
  const northWest = clockwise.reduce((best, corner, i) => {
    const reach = (place: LonLat) => {
      const [x, y] = toLocal(frame, place);
      return y - x;
    };
    return reach(corner) > reach(clockwise[best]) ? i : best;
  }, 0);
  return [...clockwise.slice(northWest), ...clockwise.slice(0, northWest)];
}

/** "north-west " for each of several places by how it lies to their middle, counted where two lie alike; "" for one alone. */
function whichOf(places: readonly LonLat[]): string[] {
  if (places.length === 1) return [''];
  const mean = (axis: 0 | 1) => places.reduce((sum, place) => sum + place[axis], 0) / places.length;
  const middle: LonLat = [mean(0), mean(1)];
  const words = places.map((place) => directionWord(azimuthDeg(middle, place)));
  return words.map((word, i) => {
    const before = words.slice(0, i).filter((each) => each === word).length;
    const alike = words.filter((each) => each === word).length;
    return `${alike > 1 ? `${ORDINALS[before] ?? `${before + 1}th`} ` : ''}${word} `;
  });
}
const ORDINALS = ['first', 'second', 'third'];

/** A, B … Z, then A2, B2 … */
const letterOf = (i: number): string =>
  `${String.fromCharCode(65 + (i % 26))}${i < 26 ? '' : Math.floor(i / 26) + 1}`;

const isGate = (feature: SiteFeature): boolean => {
  const { kind, name, reason } = feature.properties as { kind: string; name?: string; reason?: unknown };
  return (kind === 'keepOut' || kind === 'service' || kind === 'path') && /\bgate/i.test(`${name} ${reason}`);
};

/** The tip of a shadow, and a spot where a meter was held, cannot be found again; a plant's height has no spot. */
const leavesNoMark = ({ quantity, expected, of }: FeatureOf<'measure'>['properties']): boolean =>
  quantity === 'shadow' ||
  (quantity === 'wind' && expected !== undefined) ||
  (quantity === 'height' && of !== undefined);

/**
 * What can be found outside and taped from: corners of the taken field, of other fields, gateposts, corners of
 * buildings, ends of walls, and places where something was read; lettered in this order.
 */
export function findablePoints(
  document: SiteDocument,
  frame: Frame,
  layout: string | null,
): { points: FindablePoint[]; sides: FieldSide[] } {
  const features = chosenFeatures(document, layout);
  const taken = takenField(document);
  const points: FindablePoint[] = [];
  const sides: FieldSide[] = [];
  const add = (feature: SiteFeature, places: readonly LonLat[], words: string) => {
    for (const [i, which] of whichOf(places).entries())
      points.push({
        letter: letterOf(points.length),
        words: `${which}${words}`,
        lonLat: places[i],
        of: feature.id,
      });
  };
  const fields = features.filter((feature) => feature.properties.kind === 'field');
  for (const field of taken ? [taken, ...fields.filter(({ id }) => id !== taken.id)] : fields) {
    if (field.geometry.type !== 'Polygon') continue;
    const first = points.length;
    const corners = cornersOf(frame, field.geometry.coordinates[0]);
    add(field, corners, `corner of ${field.properties.name ?? 'the field'}`);
    corners.forEach((_, i) => {
      sides.push([first + i, first + ((i + 1) % corners.length)]);
    });
  }
  for (const feature of features) {
    const { geometry, properties } = feature;
    const { kind } = properties;
    const name = properties.name ?? '';
    if (isGate(feature)) add(feature, endsOf(frame, feature), `post of ${name || 'the gate'}`);
    else if (kind === 'building' && geometry.type === 'Polygon')
      add(feature, cornersOf(frame, geometry.coordinates[0]), `corner of ${name || 'the building'}`);
    else if (kind === 'wall' && geometry.type === 'LineString' && properties.opticalPorosity !== 1)
      add(feature, endsOf(frame, feature), `end of ${name || 'the wall'}`);
    else if (kind === 'measure' && geometry.type === 'Point' && !leavesNoMark(properties))
      add(feature, [[geometry.coordinates[0], geometry.coordinates[1]]], name || 'place of a reading');
  }
  return { points, sides };
}

/** Both ends of a line; the corners of an area; a point itself. */
function endsOf(frame: Frame, { geometry }: SiteFeature): LonLat[] {
  const place = ([lon, lat]: readonly number[]): LonLat => [lon, lat];
  if (geometry.type === 'Point') return [place(geometry.coordinates)];
  if (geometry.type === 'Polygon') return cornersOf(frame, geometry.coordinates[0]);
  return [place(geometry.coordinates[0]), place(geometry.coordinates[geometry.coordinates.length - 1])];
}
