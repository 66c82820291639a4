import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import papaparse from 'papaparse';
import { afterAll, describe, expect, it } from 'vitest';
import { pairOfLayouts } from '../layouts/pair-of-layouts.ts';
import { run } from './run-leeglade.ts';
import { workFolder } from './small-site.ts';

const { folder, put, remove } = workFolder();
afterAll(remove);
const site = put('pair.site.geojson', pairOfLayouts());

describe('leeglade years', () => {
  it('tells a field from year 0 to 40 in words, as data and as a table', async () => {
    const csv = join(folder, 'years.csv');
    const { stdout, stderr, status } = await run(
      'years',
      site,
      '--layout',
      'Belts first',
      '--quiet',
      '--csv',
      csv,
    );
    expect([status, stderr]).toEqual([0, '']);
    expect(stdout).toMatch(/^Pair Close.*from year 0 to 40$/m);
    expect(stdout).toContain(
      'Shelter is not reckoned to speed growth; the fast end of the band has it do so by 20 % at most.',
    );
    expect(stdout).toMatch(/^ {2}40 \(2067\) +\d+ % +\d+ % +\d+ % +\d+ % +2 of 2$/m);
    const rows = papaparse.parse<Record<string, string>>(readFileSync(csv, 'utf8').trim(), {
      header: true,
    }).data;
    expect(rows.map(({ year }) => Number(year))).toEqual(Array.from({ length: 41 }, (_, year) => year));
    for (const row of rows) {
      if (row.shelteredShareSlow === '') continue;
      expect(Number(row.shelteredShareFast)).toBeGreaterThanOrEqual(Number(row.shelteredShareSlow) - 0.02);
    }
    const json = JSON.parse(
      (await run('years', site, '--layout', 'Belts first', '--quiet', '--json')).stdout,
    );
    expect(json.years).toHaveLength(41);
    expect(json.years[40].shelteredShare).toBeCloseTo(Number(rows[40].shelteredShare), 4);
    expect(json.shelterEffect).toEqual({ usual: 1, most: 1.2 });
    expect(stdout).toContain(json.answer);
  }, 120_000);

  it('says which field is not there', async () => {
    const { stderr, status } = await run('years', site, '--field', 'Nowhere');
    expect(status).toBe(2);
    expect(stderr).toContain('there is none named "Nowhere"');
  });
});
