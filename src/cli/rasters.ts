import type { Frame } from '../geo/frame.ts';
import type { GridSpec } from '../numeric/grid.ts';
import { type RasterBand, writeGeoTiff } from './geotiff-file.ts';

/** One file of results. */
export interface Raster {
  readonly file: string;
  readonly bands: readonly RasterBand[];
}

const NO_DATA = -9999;

/** Writes a raster of the site's frame as a GeoTIFF of the UTM zone. */
export function writeRaster(path: string, raster: Raster, grid: GridSpec, frame: Frame): void {
  const { columns, rows, cellM } = grid;
  writeGeoTiff(
    path,
    raster.bands,
    {
      columns,
      rows,
      cellM,
      westM: frame.originEastingM + grid.westM,
      northM: frame.originNorthingM + grid.northM,
      epsg: frame.epsg,
    },
    NO_DATA,
  );
}
