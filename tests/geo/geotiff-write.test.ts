import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fromArrayBuffer } from 'geotiff';
import { afterAll, describe, expect, it } from 'vitest';
import { writeGeoTiff } from '../../src/geo/formats/geotiff-write.ts';
import { frameAt } from '../../src/geo/frame.ts';
import { gdalIsHere } from './gdal.ts';

const frame = frameAt([171.9, -43.6]);
const spec = { columns: 70, rows: 260, cellM: 0.5, westM: -12.5, northM: 40 };
const bands = [...Array(13)].map((_, b) => ({
  name: b === 12 ? 'growing season, "n/N" & <all>' : `month ${b + 1}`,
  values: Float32Array.from({ length: 70 * 260 }, (_, i) => (i === 71 ? Number.NaN : b + i / 100)),
}));
const file = writeGeoTiff(bands, spec, frame);
const folder = mkdtempSync(join(tmpdir(), 'geotiff-write-'));
afterAll(() => rmSync(folder, { recursive: true }));

describe('a written GeoTIFF', () => {
  it('is read back by the reading library with its values, place and names', async () => {
    const image = await (await fromArrayBuffer(file.buffer as ArrayBuffer)).getImage();
    expect([image.getWidth(), image.getHeight(), image.getSamplesPerPixel()]).toEqual([70, 260, 13]);
    expect(image.getOrigin().slice(0, 2)).toEqual([frame.originEastingM - 12.5, frame.originNorthingM + 40]);
    expect(image.getGeoKeys()?.ProjectedCSTypeGeoKey).toBe(32759);
    expect(image.getGDALNoData()).toBe(-9999);
    expect((await image.getGDALMetadata(3))?.DESCRIPTION).toBe('month 4');
    const read = await image.readRasters();
    for (const b of [0, 7, 12]) {
      const expected = Float32Array.from(bands[b].values, (value) => (Number.isNaN(value) ? -9999 : value));
      expect(read[b]).toEqual(expected);
    }
  });

  it('with one band has no extra samples', async () => {
    const one = writeGeoTiff([bands[0]], spec, frame);
    const image = await (await fromArrayBuffer(one.buffer as ArrayBuffer)).getImage();
    expect(image.fileDirectory.hasTag('ExtraSamples')).toBe(false);
  });

  it('is refused when a band does not fit the grid', () => {
    expect(() => writeGeoTiff([{ name: 'short', values: new Float32Array(3) }], spec, frame)).toThrow(
      /^Band "short" has 3 values; the grid has 18200 cells/,
    );
  });

  it.skipIf(!gdalIsHere)(
    'is read by GDAL without a warning, each value in its place (needs gdalinfo)',
    () => {
      const path = join(folder, 'months.tif');
      writeFileSync(path, file);
      const info = JSON.parse(
        execFileSync('gdalinfo', ['-json', path], { stdio: ['ignore', 'pipe', 'inherit'] }).toString(),
      );
      const said = execFileSync('sh', ['-c', `gdalinfo "${path}" 2>&1`]).toString();
      expect(said).not.toMatch(/warning|error/i);
      expect(info.size).toEqual([70, 260]);
      expect(info.geoTransform).toEqual([
        frame.originEastingM - 12.5,
        0.5,
        0,
        frame.originNorthingM + 40,
        0,
        -0.5,
      ]);
      expect(info.metadata[''].AREA_OR_POINT).toBe('Area');
      expect(info.coordinateSystem.wkt).toMatch(/ID\["EPSG",32759\]\]$/);
      expect(info.bands).toHaveLength(13);
      for (const [b, band] of info.bands.entries()) {
        expect(band.type).toBe('Float32');
        expect(band.noDataValue).toBe(-9999);
        expect(band.description).toBe(bands[b].name);
      }
      const value = execFileSync('gdallocationinfo', ['-valonly', '-b', '13', path, '69', '259']).toString();
      expect(Number(value)).toBeCloseTo(12 + 18199 / 100, 3);
    },
  );
});
