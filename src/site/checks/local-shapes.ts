import { type Frame, frameAt, type LonLat, toLocal } from '../../geo/frame.ts';
import type { SiteDocument, SiteFeature } from '../document.ts';
import { placesOf } from '../places.ts';
import type { XY } from '../plane-geometry.ts';

/** A feature with its coordinates in the plane, metres: one line for a point or a line, rings for a polygon. */
export interface LocalShape {
  readonly feature: SiteFeature;
  readonly lines: readonly (readonly XY[])[];
}

/** The shapes of all features in one plane around the first; null where nothing is drawn. */
export function localShapes(document: SiteDocument): LocalShape[] {
  const first = document.features[0];
  if (!first) return [];
  const [place] = placesOf(first.geometry.coordinates);
  const frame = frameAt(place);
  return document.features.map((feature) => ({ feature, lines: linesOf(frame, feature) }));
}

function linesOf(frame: Frame, { geometry }: SiteFeature): XY[][] {
  const inPlane = (places: Iterable<LonLat>): XY[] => Array.from(places, (place) => toLocal(frame, place));
  return geometry.type === 'Polygon'
    ? geometry.coordinates.map((ring) => inPlane(placesOf(ring)))
    : [inPlane(placesOf(geometry.coordinates))];
}
