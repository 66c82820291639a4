import { readFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { run } from './run-leeglade.ts';
import { beside, CENTRE, feature, openSite, workFolder } from './small-site.ts';

const work = workFolder();
afterAll(work.remove);

const tree = (id: string, eastM: number, properties: object) =>
  feature(id, 'Point', beside(CENTRE, eastM, 0), { kind: 'tree', tag: id.toUpperCase(), ...properties });
const coppice = { what: 'coppice', year: 2034, everyYears: 7 };
const alder = { species: 'Alnus glutinosa', plantedYear: 2027 };
const site = (features: ReturnType<typeof tree>[] = []) =>
  openSite(
    [
      tree('a1', 0, { ...alder, care: [coppice] }),
      tree('a2', 4, { ...alder, care: [coppice, { what: 'die', year: 2040 }] }),
      tree('s1', 8, {
        species: 'Picea abies',
        heightM: 9,
        care: [
          { what: 'coppice', year: 2034 },
          { what: 'replace', year: 2036, species: 'Juglans regia' },
        ],
      }),
      tree('n1', 12, {
        species: 'Juglans regia',
        plantedYear: 2030,
        layout: 'Nuts',
        care: [{ what: 'raiseCrown', year: 2030, heightM: 2 }],
      }),
      ...features,
    ],
    { layouts: [{ name: 'Nuts' }] },
  );
const path = work.put('care.site.geojson', site());

describe('leeglade care', () => {
  it('lists each winter’s work, plants with the same work together, and what is to be minded', async () => {
    const { status, stdout, stderr } = await run('care', path, '--to', '2041');
    expect(stderr).toBe('');
    expect(status).toBe(0);
    const lines = stdout.split('\n');
    expect(lines[0]).toBe('Care of the plants of Small Close, winter 2026/27 to winter 2040/41');
    expect(lines[1]).toBe('Winter 2033/34, before the season of 2034');
    expect(lines[2]).toMatch(/^ {2}Coppice: common alder A1 \(\d\.\d m\), common alder A2 \(\d\.\d m\)$/);
    expect(lines[4]).toMatch(/^ {2}Coppice: Norway spruce S1/);
    expect(lines[5]).toContain('it counts as its end');
    expect(lines[6]).toBe('Winter 2035/36, before the season of 2036');
    expect(lines[7]).toBe('  Fell and plant walnut: Norway spruce S1');
    expect(lines[9]).toMatch(/Dies or is felled: common alder A2/);
    // Cut again in 2041: one of the two is gone by then.
    expect(stdout).toMatch(/season of 2041\n {2}Coppice: common alder A1 \([^,]*\)\n/);
    expect(stdout.match(/never alone/g)).toHaveLength(1);
  });

  it('takes the years it is asked for, and a layout', async () => {
    const { stdout } = await run('care', path, '--from', '2035', '--to', '2035');
    expect(stdout).toContain('Nothing is to be done.');
    const json = async (...args: string[]) => JSON.parse((await run('care', path, '--json', ...args)).stdout);
    const all = await json('--from', '2034', '--to', '2055');
    expect(all.jobs.filter(({ id }: { id: string }) => id === 'a1')).toHaveLength(4);
    expect(all.jobs[0]).toMatchObject({ year: 2034, what: 'coppice', id: 'a1', standing: 'Alnus glutinosa' });
    // Raised in the winter of planting: there is nothing to be done.
    expect((await json('--layout', 'Nuts')).jobs.some(({ id }: { id: string }) => id === 'n1')).toBe(false);
  });

  it('writes a table', async () => {
    const csv = `${work.folder}/care.csv`;
    const { stdout } = await run('care', path, '--to', '2036', '--csv', csv);
    expect(stdout).toContain(`Written: ${csv}`);
    const rows = readFileSync(csv, 'utf8').split('\r\n');
    expect(rows[0]).toBe('year,id,kind,label,what,heightM,share,species,heightBeforeM,notes');
    expect(rows).toHaveLength(6);
    expect(rows[3]).toMatch(/^2034,s1,tree,Norway spruce S1,coppice,,,,[\d.]+,"Norway spruce, like/);
    expect(rows[4]).toMatch(/^2036,s1,tree,Norway spruce S1,replace,,,Juglans regia,,$/);
  });

  it('says a winter south of the equator by its one year', async () => {
    const south = site();
    const place = beside([171.9, -43.6], 0, 0);
    const moved = JSON.parse(JSON.stringify(south), (_, value) =>
      Array.isArray(value) && typeof value[0] === 'number' && value[0] < -60
        ? [value[0] - CENTRE[0] + place[0], value[1] - CENTRE[1] + place[1]]
        : value,
    );
    const { stdout } = await run('care', work.put('south.site.geojson', moved), '--to', '2034');
    expect(stdout).toContain('Winter 2034, before the season of 2034');
  });

  it('refuses years that end before they begin, and care that is not sound', async () => {
    expect(await run('care', path, '--from', '2040', '--to', '2030')).toMatchObject({
      status: 2,
      stderr: '--to: found 2030, expected the first year, 2040, or a later one.\n',
    });
    const bad = work.put(
      'bad.site.geojson',
      site([tree('x1', 0, { care: [{ what: 'pollard', year: 2030 }] })]),
    );
    expect(await run('care', bad)).toMatchObject({
      status: 2,
      stderr: 'bad.site.geojson: tree "x1": care[0].heightM is missing; expected a number (metres).\n',
    });
  });

  it('is followed by check', async () => {
    const late = work.put(
      'late.site.geojson',
      site([tree('x1', 2, { ...alder, care: [{ what: 'coppice', year: 2027 }] })]),
    );
    const { status, stdout } = await run('check', late);
    expect(status).toBe(2);
    expect(stdout).toContain(
      'tree "x1" (X1): care[0].year is 2027 (coppice); expected a year after its plantedYear',
    );
    expect(stdout).toContain(
      'note: tree "s1" (S1): care[0].what is "coppice", but Picea abies does not shoot again',
    );
  });
});
