import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { run } from './run-leeglade.ts';
import { openSite, workFolder } from './small-site.ts';

const work = workFolder();
afterAll(work.remove);
const SORREL_BANK = 'data-samples/sorrel-bank/sorrel-bank.site.geojson';

describe('leeglade cold', () => {
  it('ranks the fields of the demo: the low one holds most', async () => {
    const tif = join(work.folder, 'cold.tif');
    const { status, stdout, stderr } = await run('cold', SORREL_BANK, '--json', '--quiet', '--tif', tif);
    expect(stderr).toBe('');
    expect(status).toBe(0);
    const { fields, frosts } = JSON.parse(stdout) as {
      fields: { name: string; rank: number; holdsSome: boolean; dammedShare: number; sentence: string }[];
      frosts: { springs: unknown[]; said: string[] };
    };
    expect(fields.map(({ name, rank }) => [name, rank])).toEqual([
      ['Withy Bottom', 1],
      ['Pound Field', 2],
      ['Upper Lea', 2],
    ]);
    expect(fields[0].dammedShare).toBeGreaterThan(0.5);
    expect(fields[0].sentence).toMatch(/^Withy Bottom holds the most cold air: /);
    expect(frosts.springs).toHaveLength(1);
    expect([...readFileSync(tif).subarray(0, 2)]).toEqual([0x49, 0x49]);
  });

  it('says the same in words, and what is missing on flat ground without a weather file', async () => {
    const site = work.put('open.site.geojson', openSite());
    const { stdout } = await run('cold', site, '--quiet');
    expect(stdout).toContain('1. Small Close lies in no hollow: cold air runs off it.');
    expect(stdout).toContain('It is a rank, not a temperature');
    expect(stdout).toContain('need an hourly weather file of real years');
    expect(stdout).not.toMatch(/\d ?°C|degrees/);
  });
});
