/** What the Open button offers: site files, boundaries and tracks, rasters, weather, pictures. */
export const ACCEPTED_FILES =
  '.geojson,.json,.kml,.gpx,.tif,.tiff,.epw,.csv,.tmy3,.txt,.png,.jpg,.jpeg,.webp,application/geo+json,image/*';
