import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fromArrayBuffer } from 'geotiff';
import { afterAll, describe, expect, it } from 'vitest';
import type { Summary } from '../../src/batch/summary.ts';
import { run, runApart } from './run-leeglade.ts';
import { beside, box, CENTRE, feature, openSite, workFolder } from './small-site.ts';

const work = workFolder();
afterAll(work.remove);

async function raster(path: string) {
  const bytes = new Uint8Array(readFileSync(path));
  const image = await (await fromArrayBuffer(bytes.buffer)).getImage();
  return { image, bands: (await image.readRasters()) as unknown as Float32Array[] };
}
const summaryIn = (folder: string): Summary => JSON.parse(readFileSync(join(folder, 'summary.json'), 'utf8'));
const lines = (text: string) => text.split('\n').filter((line) => line !== '');

describe('leeglade light', () => {
  it('finds full light everywhere on an empty field, and writes it all', async () => {
    const site = work.put('open.site.geojson', openSite());
    const out = join(work.folder, 'open-light');
    const { status, stdout, stderr } = await run(
      'light',
      site,
      '--out',
      out,
      '--cell',
      '2',
      '--threads',
      '1',
      '--quiet',
    );
    expect(stderr).toBe('');
    expect(status).toBe(0);
    expect(stdout).toContain('100 % of open light');
    expect(readdirSync(out).sort()).toEqual([
      'daily-light-integral.tif',
      'direct-hours.tif',
      'light-share.tif',
      'open-hours.tif',
      'summary.json',
    ]);
    const share = await raster(join(out, 'light-share.tif'));
    expect(share.bands).toHaveLength(13);
    for (const band of share.bands) for (const value of band) expect(value).toBeCloseTo(1, 3);
    const hours = await raster(join(out, 'direct-hours.tif'));
    const open = await raster(join(out, 'open-hours.tif'));
    expect(hours.bands).toHaveLength(12);
    for (let month = 0; month < 12; month++) expect(hours.bands[month]).toEqual(open.bands[month]);

    const summary = summaryIn(out);
    expect(summary).toMatchObject({
      site: 'Small Close',
      year: 20,
      layout: null,
      cellM: 2,
      crs: 'EPSG:32620',
    });
    expect(summary.cells).toBe(share.image.getWidth() * share.image.getHeight());
    expect(summary.assumed).toEqual([]);
    expect(summary.directions).toBeGreaterThan(0);
    expect(summary.quadratureError!.p99).toBeLessThanOrEqual(0.01);
    expect(summary.fields).toHaveLength(1);
    expect(summary.fields[0].areaM2).toBeCloseTo(720, 0);
    expect(summary.fields[0].lightShareSeason!.p10).toBeCloseTo(1, 3);
    expect(summary.patches[0]).toMatchObject({ id: 'p1', enoughLight: true, areaShareWithEnoughLight: 1 });
  });

  it('sets no-data only inside buildings, keeps them out of the figures, and shades beside them', async () => {
    const site = work.put(
      'shed.site.geojson',
      openSite([feature('s1', 'Polygon', [box(CENTRE, 4, 4)], { kind: 'building', heightM: 5 })]),
    );
    const out = join(work.folder, 'shed');
    expect((await run('light', site, '--out', out, '--cell', '1', '--threads', '1', '--quiet')).status).toBe(
      0,
    );
    const { bands } = await raster(join(out, 'light-share.tif'));
    const season = bands[12];
    const inside = season.filter((value) => value === -9999).length;
    expect(Math.abs(inside - 64)).toBeLessThanOrEqual(8);
    const [field] = summaryIn(out).fields;
    expect(field.lightShareSeason!.mean).toBeGreaterThan(0.5);
    expect(field.lightShareSeason!.mean).toBeLessThan(1);
  });

  it('prints the summary alone with --json, and progress only on standard error', async () => {
    const site = work.put('json.site.geojson', openSite());
    const out = join(work.folder, 'json');
    const ran = await run(
      'light',
      site,
      '--out',
      out,
      '--cell',
      '3',
      '--year',
      '3',
      '--threads',
      '1',
      '--json',
    );
    const summary = JSON.parse(ran.stdout);
    expect(summary).toEqual(summaryIn(out));
    expect(summary.year).toBe(3);
    expect(ran.stderr).toContain('light 100 %');
  });

  it('gives the same figures on one thread and on two', async () => {
    const site = work.put(
      'tree.site.geojson',
      openSite([
        feature('t1', 'Point', CENTRE, {
          kind: 'tree',
          tag: 'N1',
          status: 'existing',
          heightM: 8,
          crownRadiusM: 4,
        }),
      ]),
    );
    const args = (threads: string) => [
      'light',
      site,
      '--out',
      join(work.folder, `t${threads}`),
      ...['--cell', '2', '--threads', threads, '--json', '--quiet'],
    ];
    const here = await run(...args('1'));
    const apart = runApart(args('2'));
    expect(apart.stderr).toBe('');
    const [one, two] = [here, apart].map(({ stdout }) => JSON.parse(stdout) as Summary);
    expect(two.fields).toEqual(one.fields);
    expect(two.patches).toEqual(one.patches);
    expect(one.fields[0].lightShareSeason!.mean).toBeLessThan(0.98);
  });

  it('reads a patch at its own height', async () => {
    // Under a crown that begins at 3 m a reading at 3.5 m stands in foliage, one at the ground below all of it.
    const tree = feature('t1', 'Point', beside(CENTRE, 0, 6), {
      kind: 'tree',
      status: 'existing',
      heightM: 7,
      crownRadiusM: 6,
      crownBaseM: 3,
      crownForm: 'cylinder',
    });
    const shareAt = async (readingHeightM: number) => {
      const site = openSite([tree]);
      site.features[1].properties.readingHeightM = readingHeightM;
      const path = work.put(`height-${readingHeightM}.site.geojson`, site);
      const ran = await run(
        'light',
        path,
        '--out',
        join(work.folder, 'height'),
        '--cell',
        '1',
        '--threads',
        '1',
        '--json',
        '--quiet',
      );
      return (JSON.parse(ran.stdout) as Summary).patches[0].lightShareSeason!.mean;
    };
    expect(await shareAt(6.5)).toBeGreaterThan((await shareAt(0.5)) + 0.05);
  });
});

describe('the rasters', () => {
  const gdal = spawnSync('gdalinfo', ['--version']).status === 0;
  it.skipIf(!gdal)('are read by GDAL: system, place, no-data and band names (needs gdalinfo)', async () => {
    const out = join(work.folder, 'gdal');
    const site = work.put('gdal.site.geojson', openSite());
    await run('light', site, '--out', out, '--cell', '2', '--threads', '1', '--quiet');
    const told = spawnSync('gdalinfo', ['-json', join(out, 'light-share.tif')], { encoding: 'utf8' });
    expect(told.stderr).toBe('');
    const info = JSON.parse(told.stdout);
    expect(info.coordinateSystem.wkt).toContain('WGS 84 / UTM zone 20N');
    const [west, width, , north, , height] = info.geoTransform;
    expect([width, height]).toEqual([2, -2]);
    // Snapped outward to whole cells of the site's frame, whose origin is a whole metre.
    expect([west % 1, north % 1]).toEqual([0, 0]);
    expect(info.metadata[''].AREA_OR_POINT).toBe('Area');
    const names = info.bands.map((band: { description: string }) => band.description);
    expect(names[0]).toBe('January, share of open light');
    expect(names[12]).toBe('growing season, share of open light');
    for (const band of info.bands)
      expect({ type: band.type, noData: band.noDataValue }).toEqual({ type: 'Float32', noData: -9999 });
  });
});

describe('leeglade shelter', () => {
  it('cuts no wind on an empty field', async () => {
    const site = work.put('calm.site.geojson', openSite());
    const out = join(work.folder, 'calm');
    const { status, stdout } = await run(
      'shelter',
      site,
      '--out',
      out,
      '--cell',
      '2',
      '--threads',
      '1',
      '--quiet',
    );
    expect(status).toBe(0);
    expect(stdout).toContain('wind cut by 0 %');
    const share = await raster(join(out, 'wind-share.tif'));
    expect(share.bands).toHaveLength(3);
    for (const band of share.bands) for (const value of band) expect(value).toBe(1);
    const summary = summaryIn(out);
    expect(summary.fields[0].shelteredAreaM2).toEqual({ below50: 0, below70: 0, below85: 0 });
    expect(summary.quadratureError).toBeUndefined();
  });

  it('shelters the lee of a belt, and counts fewer gale hours the higher the gale', async () => {
    const belt = feature('b1', 'LineString', [beside(CENTRE, -14, -40), beside(CENTRE, -14, 40)], {
      kind: 'belt',
      status: 'existing',
      heightM: 8,
      widthM: 2,
    });
    const site = work.put('belt.site.geojson', openSite([belt]));
    const galesAt = async (gale: string) => {
      const out = join(work.folder, `gale-${gale}`);
      await run('shelter', site, '--out', out, '--cell', '2', '--threads', '1', '--quiet', '--gale', gale);
      return { summary: summaryIn(out), ...(await raster(join(out, 'gale-hours.tif'))) };
    };
    const low = await galesAt('4');
    const high = await galesAt('8');
    expect(low.summary.fields[0].windShareYear!.mean).toBeLessThan(0.6);
    expect(low.summary.fields[0].shelteredAreaM2!.below70).toBeGreaterThan(600);
    const mean = (values: Float32Array) => values.reduce((sum, value) => sum + value, 0) / values.length;
    expect(mean(high.bands[2])).toBeLessThan(mean(low.bands[2]));
  });
});

describe('leeglade check', () => {
  it('says nothing of a sound file', async () => {
    const ran = await run('check', work.put('sound.site.geojson', openSite()));
    expect(ran).toEqual({ status: 0, stdout: '', stderr: '' });
  });

  it('lists problems and ends with status 2: an unknown species, a file that is not there', async () => {
    const site = openSite(
      [feature('t1', 'Point', CENTRE, { kind: 'tree', species: 'Juglans regiaa', plantedYear: 2027 })],
      { weatherFile: 'nowhere.epw' },
    );
    const { status, stdout } = await run('check', work.put('look.site.geojson', site));
    expect(status).toBe(2);
    expect(lines(stdout).some((line) => line.includes('"t1"') && line.includes('Juglans regiaa'))).toBe(true);
    expect(lines(stdout).some((line) => line.includes('nowhere.epw'))).toBe(true);
  });
});
