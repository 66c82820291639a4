import type { ImageSource, Map as MapLibre } from 'maplibre-gl';
import type { Corners } from './grid-corners.ts';
import type { PaintedPicture } from './picture-painter.ts';

/** One clear pixel, shown until the first picture is painted. */
const CLEAR_PIXEL =
  'data:image/png;base64,iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg==';

export interface RasterPlace {
  readonly id: string;
  /** The layer it is laid under. */
  readonly beforeId: string;
  readonly opacity: number;
}

type LngLatCorners = [[number, number], [number, number], [number, number], [number, number]];
const mutable = (corners: Corners): LngLatCorners => corners.map(([lon, lat]) => [lon, lat]) as LngLatCorners;

/** Lays a painted picture on the ground, in place of the one before; null takes it off. */
export function layPicture(
  map: MapLibre,
  place: RasterPlace,
  picture: { readonly painted: PaintedPicture; readonly corners: Corners } | null,
): void {
  const { id } = place;
  if (!picture) {
    if (map.getLayer(id)) map.setLayoutProperty(id, 'visibility', 'none');
    return;
  }
  const { painted, corners } = picture;
  if (!map.getSource(id)) {
    map.addSource(id, { type: 'image', url: CLEAR_PIXEL, coordinates: mutable(corners) });
    map.addLayer(
      {
        id,
        type: 'raster',
        source: id,
        paint: { 'raster-fade-duration': 0, 'raster-opacity': place.opacity, 'raster-resampling': 'linear' },
      },
      place.beforeId,
    );
  }
  const source = map.getSource(id) as ImageSource;
  source.updateImage({
    image: new ImageData(painted.pixels, painted.width, painted.height),
    coordinates: mutable(corners),
  });
  map.setLayoutProperty(id, 'visibility', 'visible');
  map.setPaintProperty(id, 'raster-opacity', place.opacity);
}

/** Lays an image file (a scan, an air photo) on the ground by its four corners. */
export function layImageFile(
  map: MapLibre,
  place: RasterPlace,
  picture: { readonly url: string; readonly corners: Corners },
): void {
  const coordinates = mutable(picture.corners);
  const source = map.getSource(place.id) as ImageSource | undefined;
  if (!source) {
    map.addSource(place.id, { type: 'image', url: picture.url, coordinates });
    map.addLayer(
      {
        id: place.id,
        type: 'raster',
        source: place.id,
        paint: { 'raster-fade-duration': 0, 'raster-opacity': place.opacity },
      },
      place.beforeId,
    );
    return;
  }
  source.updateImage({ url: picture.url, coordinates });
  map.setPaintProperty(place.id, 'raster-opacity', place.opacity);
}

/** Takes a laid raster off the map altogether. */
export function takeRasterOff(map: MapLibre, id: string): void {
  if (map.getLayer(id)) map.removeLayer(id);
  if (map.getSource(id)) map.removeSource(id);
}
