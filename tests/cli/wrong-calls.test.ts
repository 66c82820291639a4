import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { run, runApart } from './run-leeglade.ts';
import { box, CENTRE, feature, openSite, workFolder } from './small-site.ts';

const work = workFolder();
afterAll(work.remove);

const lines = (text: string) => text.split('\n').filter((line) => line !== '');

describe('a wrong call or input', () => {
  const sound = () => work.put('for-calls.site.geojson', openSite());
  const cases: [string, () => string[], RegExp][] = [
    ['no command', () => [], /no command/],
    ['an unknown command', () => ['shine', sound()], /shine/],
    ['an unknown option', () => ['light', sound(), '--shade', '3'], /--shade/],
    ['no site file', () => ['light'], /site file/],
    ['a year that is no number', () => ['light', sound(), '--year', 'soon'], /--year.*"soon".*0 to 200/],
    ['a cell of nothing', () => ['light', sound(), '--cell', '0'], /--cell.*"0"/],
    [
      'a file that is not there',
      () => ['light', join(work.folder, 'none.site.geojson')],
      /none\.site\.geojson.*no such file/,
    ],
    ['a folder', () => ['check', work.folder], /folder/],
    ['an empty file', () => ['check', work.put('empty.site.geojson', '')], /empty\.site\.geojson.*empty/],
    [
      'half a file',
      () => ['check', work.put('cut.site.geojson', JSON.stringify(openSite()).slice(0, 700))],
      /cut\.site\.geojson.*cut short/,
    ],
    ['JSON that is not GeoJSON', () => ['check', work.put('plain.site.geojson', '{"a":1}')], /not GeoJSON/],
    [
      'GeoJSON that is no site',
      () => ['check', work.put('shapes.geojson', { type: 'FeatureCollection', features: [] })],
      /without a site/,
    ],
    [
      'a field that is not there',
      () => ['light', sound(), '--field', 'Far Field'],
      /"Far Field".*"Small Close"/,
    ],
    ['a layout that is not there', () => ['light', sound(), '--layout', 'B'], /--layout.*"B"/],
    [
      'too many cells',
      () => [
        'light',
        work.put(
          'wide.site.geojson',
          openSite([feature('f2', 'Polygon', [box(CENTRE, 2000, 2000)], { kind: 'field' })]),
        ),
      ],
      /25 million/,
    ],
    [
      'a terrain file that is not there',
      () => ['light', work.put('no-ground.site.geojson', openSite([], { terrainFile: 'ground.tif' }))],
      /terrainFile.*"ground\.tif".*no such file/,
    ],
    [
      'a terrain file that is none',
      () => {
        work.put('words.tif', 'these are words');
        return ['check', work.put('words.site.geojson', openSite([], { terrainFile: 'words.tif' }))];
      },
      /words\.tif/,
    ],
    [
      'a weather file that is none',
      () => {
        work.put('words.epw', 'these are words');
        return ['light', work.put('words2.site.geojson', openSite([], { weatherFile: 'words.epw' }))];
      },
      /words\.epw/,
    ],
    [
      'a negative height',
      () => [
        'check',
        work.put(
          'negative.site.geojson',
          openSite([feature('t9', 'Point', CENTRE, { kind: 'tree', heightM: -3 })]),
        ),
      ],
      /negative\.site\.geojson.*"t9".*heightM is -3.*above 0/,
    ],
    [
      'a latitude of 95',
      () => [
        'check',
        work.put('north.site.geojson', openSite([feature('t9', 'Point', [-64.5, 95], { kind: 'tree' })])),
      ],
      /"t9".*95.*latitude/,
    ],
    [
      'a boundary that crosses itself',
      () => {
        const [a, b, c, d] = box(CENTRE, 5, 5);
        return [
          'check',
          work.put(
            'bow.site.geojson',
            openSite([feature('p9', 'Polygon', [[a, c, b, d, a]], { kind: 'patch' })]),
          ),
        ];
      },
      /"p9".*crosses itself/,
    ],
    [
      'a crown base above its top',
      () => [
        'check',
        work.put(
          'base.site.geojson',
          openSite([
            feature('t9', 'Point', CENTRE, { kind: 'tree', status: 'existing', heightM: 4, crownBaseM: 5 }),
          ]),
        ),
      ],
      /"t9".*crownBaseM is 5/,
    ],
  ];
  for (const [name, args, sentence] of cases)
    it(`is told in one line and ends with 2: ${name}`, async () => {
      const { status, stdout, stderr } = await run(...args());
      expect(stderr).toMatch(sentence);
      expect(lines(stderr)).toHaveLength(1);
      expect(stdout).toBe('');
      expect(status).toBe(2);
    });

  it('leaves no results behind', async () => {
    const out = join(work.folder, 'nothing');
    await run('light', sound(), '--field', 'Far Field', '--out', out);
    expect(existsSync(out)).toBe(false);
  });

  it('is not what help is', async () => {
    const { status, stdout, stderr } = await run('--help');
    expect(status).toBe(0);
    expect(stderr).toBe('');
    for (const command of ['check', 'light', 'shelter']) expect(stdout).toContain(command);
  });
});

describe('the program', () => {
  it('ends with the status, in a process of its own', () => {
    const { status, stdout, stderr } = runApart(['check', join(work.folder, 'none.site.geojson')]);
    expect(lines(stderr)).toHaveLength(1);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
  });

  it('takes paths from where the person stood when npm starts it', () => {
    work.put('here/sound.site.geojson', openSite());
    const ran = runApart(['check', 'sound.site.geojson'], {
      npm_lifecycle_event: 'leeglade',
      INIT_CWD: join(work.folder, 'here'),
    });
    expect(ran).toEqual({ status: 0, stdout: '', stderr: '' });
  });
});
