import { type Frame, frameAt, type LonLat, toLonLat } from '../src/geo/frame.ts';
import type { SiteFeature } from '../src/site/document.ts';
import { validateFeature } from '../src/site/validate-feature.ts';

/** Metres east and north of the site's middle, along its map grid. */
export type Spot = readonly [eastM: number, northM: number];

/** Draws features by metres. Coordinates are rounded to a millimetre, so that a file comes out the same everywhere. */
export interface Sketch {
  readonly frame: Frame;
  point(id: string, spot: Spot, properties: object): SiteFeature;
  line(id: string, spots: readonly Spot[], properties: object): SiteFeature;
  area(id: string, corners: readonly Spot[], properties: object): SiteFeature;
}

export function sketchAt(middle: LonLat): Sketch {
  const frame = frameAt(middle);
  const position = ([eastM, northM]: Spot) =>
    toLonLat(frame, [eastM, northM]).map((degrees) => Number(degrees.toFixed(8)));
  const feature = (id: string, type: string, coordinates: unknown, properties: object): SiteFeature => {
    const drawn: unknown = { type: 'Feature', id, properties, geometry: { type, coordinates } };
    validateFeature(drawn);
    return drawn;
  };
  return {
    frame,
    point: (id, spot, properties) => feature(id, 'Point', position(spot), properties),
    line: (id, spots, properties) => feature(id, 'LineString', spots.map(position), properties),
    area: (id, corners, properties) =>
      feature(id, 'Polygon', [[...corners, corners[0]].map(position)], properties),
  };
}
