import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { run } from './run-leeglade.ts';
import { beside, CENTRE, feature, openSite, workFolder } from './small-site.ts';

const work = workFolder();
afterAll(work.remove);

const tree = (id: string, eastM: number, properties: Record<string, unknown>) =>
  feature(id, 'Point', beside(CENTRE, eastM, 0), { kind: 'tree', ...properties });
const measured = (id: string, eastM: number, heightM: number) =>
  tree(id, eastM, {
    tag: id.toUpperCase(),
    species: 'Alnus glutinosa',
    plantedYear: 2012,
    heightM,
    measuredYear: 2026,
  });
const features = [
  measured('a1', -9, 14),
  measured('a2', -6, 15),
  measured('a3', -3, 14.5),
  tree('apple-1', 3, {
    species: 'Malus domestica',
    rootstock: 'MM106',
    status: 'planned',
    plantedYear: 2027,
  }),
];
const site = work.put('growth.site.geojson', openSite(features));

interface Answer {
  readonly vigour: {
    readonly site: { readonly vigour: number } | null;
    readonly readings: readonly { readonly of: string; readonly missM: number; readonly missShare: number }[];
    readonly missBefore: { readonly meanShare: number };
    readonly missAfter: { readonly meanShare: number };
  };
  readonly species: readonly {
    readonly species: string;
    readonly rootstock: string | null;
    readonly sizes: readonly {
      readonly yearsAfterPlanting: number;
      readonly heightM: Record<string, number>;
    }[];
    readonly leaves: { readonly out: { readonly halfDay: number } } | null;
    readonly sources: Record<string, string | null>;
  }[];
}
const ask = async (...more: string[]): Promise<Answer> => {
  const { status, stdout, stderr } = await run('growth', site, '--json', ...more);
  expect(stderr).toBe('');
  expect(status).toBe(0);
  return JSON.parse(stdout) as Answer;
};

describe('leeglade growth', () => {
  it('gives each species of the site its sizes with a band, its leaves and its sources', async () => {
    const { species } = await ask();
    expect(species.map((each) => each.species)).toEqual(['Malus domestica', 'Alnus glutinosa']);
    for (const { sizes, sources } of species) {
      expect(sizes.map(({ yearsAfterPlanting }) => yearsAfterPlanting)).toEqual([0, 5, 10, 20, 40]);
      for (const { yearsAfterPlanting, heightM } of sizes.slice(1)) {
        expect(heightM.slow, `${yearsAfterPlanting}`).toBeLessThan(heightM.usual);
        expect(heightM.fast).toBeGreaterThan(heightM.usual);
      }
      for (const what of ['height', 'curve', 'spread', 'leaves', 'transmittance', 'belt'])
        expect(sources[what]?.length).toBeGreaterThan(3);
    }
  });

  it('shows each measured height with its miss, and the vigour that they say', async () => {
    const { vigour } = await ask();
    expect(vigour.readings.map(({ of }) => of)).toEqual(['a1', 'a2', 'a3']);
    for (const { missM, missShare } of vigour.readings) expect(Math.sign(missM)).toBe(Math.sign(missShare));
    expect(vigour.site!.vigour).toBeGreaterThan(1);
    expect(vigour.missAfter.meanShare).toBeLessThan(vigour.missBefore.meanShare);
    const { stdout } = await run('growth', site);
    expect(stdout).toMatch(/3 heights of 3 plants say that things grow to 1\.\d\d times/);
    expect(stdout).toMatch(/A1, planted 2012, read end of 2026: 14\.0 m, expected \d+\.\d m, miss \+\d/);
  });

  it('asks of one species by either name, and of its rootstock', async () => {
    const own = (await ask('--species', 'apple')).species[0];
    const dwarf = (await ask('--species', 'Malus domestica', '--rootstock', 'm9')).species[0];
    expect(dwarf.rootstock).toBe('M9');
    expect(dwarf.sizes[4].heightM.usual).toBeLessThan(0.4 * own.sizes[4].heightM.usual);
  });

  it('writes the sizes as a table', async () => {
    const file = join(work.folder, 'growth.csv');
    expect((await run('growth', site, '--csv', file)).status).toBe(0);
    const rows = readFileSync(file, 'utf8').trim().split('\n');
    expect(rows).toHaveLength(1 + 2 * 5 * 3);
    expect(rows[0]).toMatch(/^species,common_name,rootstock,pace,years_after_planting,height_m,spread_m/);
    expect(rows[1]).toContain('"NHBC Standards 4.2 (2006), Table 12"');
  });

  it('puts leaf-out half a year later on the other half of the earth', async () => {
    const day = async (path: string) => {
      const { stdout } = await run('growth', path, '--json', '--species', 'Alnus glutinosa');
      return (JSON.parse(stdout) as Answer).species[0].leaves!.out.halfDay;
    };
    const south = work.put(
      'south.site.geojson',
      JSON.parse(
        JSON.stringify(openSite(features), (_, value) =>
          Array.isArray(value) && value.length === 2 && typeof value[0] === 'number'
            ? [value[0], -value[1]]
            : value,
        ),
      ),
    );
    expect(((await day(south)) - (await day(site)) + 365) % 365).toBeCloseTo(182.5, 6);
  });

  it('refuses what is not known in one line that helps', async () => {
    const wrong = await run('growth', site, '--species', 'Malus domesticca');
    expect(wrong.status).toBe(2);
    expect(wrong.stderr).toContain('did you mean "Malus domestica"?');
    const stock = await run('growth', site, '--species', 'apple', '--rootstock', 'Z99');
    expect(stock.status).toBe(2);
    expect(stock.stderr).toContain('one of M27');
    const alone = await run('growth', site, '--rootstock', 'M9');
    expect(alone.status).toBe(2);
    expect(alone.stderr).toContain('without --species');
  });
});
