import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import papaparse from 'papaparse';
import { afterAll, describe, expect, it } from 'vitest';
import { run } from './run-leeglade.ts';
import { beside, box, CENTRE, feature, openSite, type Place, workFolder } from './small-site.ts';

const work = workFolder();
afterAll(work.remove);

const east = beside(CENTRE, 120, 0);
const along = (centre: Place, westM: number) => [beside(centre, -westM, -25), beside(centre, -westM, 25)];
const choosing = {
  knockOuts: [
    { measure: 'areaM2', atLeast: 700 },
    { measure: 'toAccessM', atMost: 50 },
  ],
  order: [{ measure: 'bothM2' }, { measure: 'lightGrowing' }],
};
/** Three fields; the first behind a neighbour's belt, the last too small for what is asked. */
const site = (more: Record<string, unknown> = {}) =>
  openSite(
    [
      feature('f2', 'Polygon', [box(east, 15, 12)], { kind: 'field', name: 'Open, East' }),
      feature('f3', 'Polygon', [box(beside(CENTRE, 300, 0), 8, 8)], { kind: 'field', name: 'Nook' }),
      feature('b1', 'LineString', along(CENTRE, 20), {
        kind: 'belt',
        status: 'existing',
        heightM: 10,
        owner: 'the neighbour',
      }),
      feature('b2', 'LineString', along(east, 20), {
        kind: 'belt',
        status: 'planned',
        species: 'Alnus cordata',
        plantedYear: 2027,
        layout: 'Belt',
      }),
    ],
    { choosing, layouts: [{ name: 'Belt' }], ...more },
  );
const path = work.put('three.site.geojson', site());
const choose = (...args: string[]) => run('choose', path, '--threads', '1', '--quiet', ...args);

describe('leeglade choose', () => {
  it('says what matters, what knocks out and how firm it is, and writes table, data and page', async () => {
    const out = join(work.folder, 'out');
    const { status, stdout, stderr } = await choose('--out', out);
    expect([status, stderr]).toEqual([0, '']);
    expect(stdout).toContain('Small Close: 3 fields at 2 m (year 0 is 2027)');
    expect(stdout).toMatch(/Small Close has the most ground with both/);
    expect(stdout).toMatch(/to the neighbour’s belt and has its wind cut by \d+ % in return/);
    expect(stdout).toContain('Nook is out: at least 700 m² was asked, 256 m² is found.');
    expect(stdout).toContain('Not judged: a lorry can get there (a path or track within 50 m)');
    expect(stdout).toMatch(/Small Close comes first in .*draw/);
    expect(readdirSync(out).sort()).toEqual(['choose.csv', 'choose.json', 'choose.pdf']);
    expect(readFileSync(join(out, 'choose.pdf')).subarray(0, 5).toString()).toBe('%PDF-');
  });

  it('writes the same figures in table and data, each with its unit', async () => {
    const out = join(work.folder, 'same');
    const { stdout } = await choose('--out', out, '--json');
    const answer = JSON.parse(stdout);
    expect(readFileSync(join(out, 'choose.json'), 'utf8')).toBe(stdout);
    const rows = papaparse.parse<Record<string, string>>(readFileSync(join(out, 'choose.csv'), 'utf8'), {
      header: true,
      skipEmptyLines: true,
    }).data;
    expect(answer.fields.map(({ name, out: isOut }: never) => [name, isOut])).toEqual([
      ['Small Close', false],
      ['Open, East', false],
      ['Nook', true],
    ]);
    for (const { key, unit } of answer.measures)
      for (const state of ['asItStands', 'year0', 'year10', 'year20'])
        for (const { name, measures } of answer.fields) {
          const byState = typeof measures[key] === 'object' && measures[key] !== null;
          if (!byState && state !== 'asItStands') continue;
          const row = rows.find(
            (each) => each.measure === key && each.state === (byState ? state : '') && each.without === '',
          );
          const value = byState ? measures[key][state] : measures[key];
          expect([key, name, row?.unit, row?.[name]]).toEqual([key, name, unit, String(value ?? '')]);
        }
    const without = rows.find(({ without, measure }) => without && measure === 'windCutGrowing');
    expect(without?.without).toBe('Belt (the neighbour)');
    expect(Number(without?.['Small Close'])).toBe(answer.fields[0].withoutEdges[0].windCutGrowing);
    expect(without?.Nook).toBe('');
    const { firstShare } = answer.fields[0];
    expect(firstShare + answer.fields[1].firstShare).toBeCloseTo(1, 3);
    expect(answer.fields[2].firstShare).toBeNull();
    expect(answer.fields[2].knockOuts[0]).toMatchObject({ measure: 'areaM2', atLeast: 700, met: false });
  });

  it('compares the fields that are named, by name or id, in a layout', async () => {
    const out = join(work.folder, 'two');
    const two = ['--fields', 'f2,nook', '--out', out, '--json'];
    const bare = JSON.parse((await choose(...two)).stdout);
    const belted = JSON.parse((await choose(...two, '--layout', 'Belt')).stdout);
    for (const { fields } of [bare, belted])
      expect(fields.map(({ id }: { id: string }) => id)).toEqual(['f2', 'f3']);
    const [before, after] = [bare, belted].map(({ fields }) => fields[0]);
    expect(after.measures.windCutGrowing.asItStands).toBe(before.measures.windCutGrowing.asItStands);
    expect(after.measures.windCutGrowing.year20).toBeGreaterThan(before.measures.windCutGrowing.year20 + 0.1);
    expect(before.shelteredFromYear).toEqual({ slow: null, usual: null, fast: null });
    expect(after.shelteredFromYear.usual).toBeLessThan(20);
  });

  it('says in one line what is wrong with a call or a file', async () => {
    const { site: record, ...rest } = site();
    const wrong = work.put('wrong.site.geojson', {
      ...rest,
      site: { ...record, choosing: { knockOuts: [{ measure: 'areaM2' }] } },
    });
    const none = work.put('none.site.geojson', { ...rest, site: record, features: [] });
    for (const [args, line] of [
      [[path, '--fields', 'Far'], /none named "Far"; expected one of "Small Close", "Open, East", "Nook"/],
      [[path, '--fields', ','], /--fields: no name is given/],
      [[path, '--cell', '0'], /--cell.*"0".*0\.5 to 50/],
      [[path, '--layout', 'B'], /--layout.*"B".*"Belt"/],
      [[path, '--paper', 'A9'], /--paper.*A9/],
      [[wrong], /wrong\.site\.geojson.*choosing\.knockOuts\[0\].*atLeast or atMost/],
      [[none], /none\.site\.geojson: no field is drawn/],
    ] as const) {
      const { status, stdout, stderr } = await run('choose', ...args, '--quiet');
      expect([args, status, stdout, stderr.trim().split('\n').length]).toEqual([args, 2, '', 1]);
      expect(stderr.trim()).toMatch(line);
    }
  });
});
