import type { LonLat } from '../geo/frame.ts';
import type { SiteDocument, SiteFeature } from '../site/document.ts';

/** True inside the outer ring and outside the holes; degrees will do at the size of a site. */
function insidePolygon(rings: readonly (readonly (readonly number[])[])[], [lon, lat]: LonLat): boolean {
  let inside = false;
  for (const ring of rings) {
    for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
      const [xi, yi] = ring[i];
      const [xj, yj] = ring[j];
      if (yi > lat !== yj > lat && lon < ((xj - xi) * (lat - yi)) / (yj - yi) + xi) inside = !inside;
    }
  }
  return inside;
}

/** The area features of a kind at a place, in the order they were drawn. */
export const areasAt = (
  document: SiteDocument,
  kind: SiteFeature['properties']['kind'],
  layout: string | null,
  lonLat: LonLat,
): SiteFeature[] =>
  document.features.filter(
    (feature) =>
      feature.properties.kind === kind &&
      feature.geometry.type === 'Polygon' &&
      (feature.properties.layout === undefined || feature.properties.layout === layout) &&
      insidePolygon(feature.geometry.coordinates, lonLat),
  );
