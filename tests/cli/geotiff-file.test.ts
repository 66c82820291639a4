import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fromArrayBuffer } from 'geotiff';
import { afterAll, describe, expect, it } from 'vitest';
import { writeGeoTiff } from '../../src/cli/geotiff-file.ts';
import { workFolder } from './small-site.ts';

const work = workFolder();
afterAll(work.remove);

const place = { columns: 300, rows: 700, cellM: 0.5, westM: 400000, northM: 4990000, epsg: 32620 };
const value = (band: number, cell: number) => (cell === 5 ? Number.NaN : band * 1000 + cell / 7);
const bands = ['January, hours', 'février < “half”'].map((description, band) => ({
  description,
  values: Float32Array.from({ length: place.columns * place.rows }, (_, cell) => value(band, cell)),
}));
const path = join(work.folder, 'raster.tif');
writeGeoTiff(path, bands, place, -9999);

describe('a written GeoTIFF', () => {
  it('gives back every value of every band, no-data for what has none', async () => {
    const bytes = new Uint8Array(readFileSync(path));
    const image = await (await fromArrayBuffer(bytes.buffer)).getImage();
    expect([image.getWidth(), image.getHeight(), image.getSamplesPerPixel()]).toEqual([300, 700, 2]);
    expect(image.getGDALNoData()).toBe(-9999);
    const read = (await image.readRasters()) as unknown as Float32Array[];
    for (let band = 0; band < 2; band++) {
      expect(read[band][5]).toBe(-9999);
      const wrong = read[band].findIndex((found, cell) => cell !== 5 && found !== bands[band].values[cell]);
      expect(wrong).toBe(-1);
    }
  });

  it('lies where it should: outer corner, cell size, system', async () => {
    const bytes = new Uint8Array(readFileSync(path));
    const image = await (await fromArrayBuffer(bytes.buffer)).getImage();
    expect(image.getBoundingBox()).toEqual([400000, 4990000 - 350, 400150, 4990000]);
    expect(image.getGeoKeys()).toMatchObject({ ProjectedCSTypeGeoKey: 32620, GTRasterTypeGeoKey: 1 });
  });

  const gdal = spawnSync('gdalinfo', ['--version']).status === 0;
  it.skipIf(!gdal)('is read by gdalinfo without a warning, band names and all', () => {
    const { stdout, stderr } = spawnSync('gdalinfo', ['-json', path], { encoding: 'utf8' });
    expect(stderr).toBe('');
    const info = JSON.parse(stdout);
    expect(info.geoTransform).toEqual([400000, 0.5, 0, 4990000, 0, -0.5]);
    expect(info.coordinateSystem.wkt).toContain('UTM zone 20N');
    expect(info.coordinateSystem.wkt).toContain('32620');
    expect(info.metadata[''].AREA_OR_POINT).toBe('Area');
    expect(info.bands.map((band: { description: string }) => band.description)).toEqual(
      bands.map((band) => band.description),
    );
    for (const band of info.bands) {
      expect(band.type).toBe('Float32');
      expect(band.noDataValue).toBe(-9999);
    }
  });
});
