import type { LonLat } from '../geo/frame.ts';
import { destination } from '../geo/geodesic.ts';
import type { AppState } from '../state/model.ts';

/** South-west and north-east corner. */
export type Bounds = [[number, number], [number, number]];

/** Half the width of what is shown of a site on which nothing is drawn yet, metres. */
const EMPTY_SITE_HALF_M = 75;

function eachPosition(coordinates: unknown, visit: (position: LonLat) => void): void {
  if (!Array.isArray(coordinates)) return;
  if (typeof coordinates[0] === 'number') visit(coordinates as unknown as LonLat);
  else for (const part of coordinates) eachPosition(part, visit);
}

/** The box around everything on the site, laid pictures too; around its place when nothing is drawn. */
export function siteBounds(state: Pick<AppState, 'document' | 'frame'>): Bounds {
  let [west, south, east, north] = [180, 90, -180, -90];
  const take = ([lon, lat]: LonLat): void => {
    west = Math.min(west, lon);
    south = Math.min(south, lat);
    east = Math.max(east, lon);
    north = Math.max(north, lat);
  };
  const { features, site } = state.document;
  for (const feature of features) eachPosition(feature.geometry.coordinates, take);
  for (const picture of site.pictures ?? []) for (const corner of picture.cornersLonLat) take(corner);
  const centre: LonLat =
    west <= east ? [(west + east) / 2, (south + north) / 2] : (site.placeLonLat ?? state.frame.centreLonLat);
  // A lone tree has no extent of its own: show a garden's worth of ground around it.
  const half = EMPTY_SITE_HALF_M;
  if (west > east || north - south < 1e-5) {
    take(destination(centre, 225, half * Math.SQRT2));
    take(destination(centre, 45, half * Math.SQRT2));
  }
  return [
    [west, south],
    [east, north],
  ];
}
