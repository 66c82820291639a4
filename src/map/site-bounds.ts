import type { LonLat } from '../geo/frame.ts';
import { destination } from '../geo/geodesic.ts';
import type { SiteFeature } from '../site/document.ts';
import { placesOf } from '../site/places.ts';
import type { AppState } from '../state/model.ts';

/** South-west and north-east corner. */
export type Bounds = [[number, number], [number, number]];

/** Half the width of what is shown of a site on which nothing is drawn yet, metres. */
const EMPTY_SITE_HALF_M = 75;

/** Ground shown around the taken field, metres. */
const ABOUT_FIELD_M = 20;

/** That of the field that is taken, so that its edges are seen too; null when none is. */
export function takenFieldBounds({ document }: Pick<AppState, 'document'>): Bounds | null {
  const field = document.features.find(({ properties }) => properties.kind === 'field' && properties.taken);
  return field ? boundsAround(field) : null;
}

/** The box around a field and some ground about it. */
export function boundsAround(field: SiteFeature): Bounds {
  const corners = [...placesOf(field.geometry.coordinates)];
  const lons = corners.map(([lon]) => lon);
  const lats = corners.map(([, lat]) => lat);
  const [west, south] = destination([Math.min(...lons), Math.min(...lats)], 225, ABOUT_FIELD_M * Math.SQRT2);
  const [east, north] = destination([Math.max(...lons), Math.max(...lats)], 45, ABOUT_FIELD_M * Math.SQRT2);
  return [
    [west, south],
    [east, north],
  ];
}

/** The box around everything on the site, laid pictures too; around its place when nothing is drawn. */
export function siteBounds(state: Pick<AppState, 'document' | 'centre'>): Bounds {
  let [west, south, east, north] = [180, 90, -180, -90];
  const take = ([lon, lat]: LonLat): void => {
    west = Math.min(west, lon);
    south = Math.min(south, lat);
    east = Math.max(east, lon);
    north = Math.max(north, lat);
  };
  const { features, site } = state.document;
  for (const feature of features) for (const place of placesOf(feature.geometry.coordinates)) take(place);
  for (const picture of site.pictures ?? []) for (const corner of picture.cornersLonLat) take(corner);
  const centre: LonLat =
    west <= east ? [(west + east) / 2, (south + north) / 2] : (site.placeLonLat ?? state.centre);
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
