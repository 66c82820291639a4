import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { serialiseSite } from '../../src/site/serialise-site.ts';
import { cutSite, eightTrees } from '../cuts/cut-site.ts';
import { run } from './run-leeglade.ts';
import { workFolder } from './small-site.ts';

const work = workFolder();
afterAll(work.remove);
const site = work.put('cuts.site.geojson', JSON.parse(serialiseSite(cutSite(eightTrees(1), 0.5))));

describe('leeglade cuts', () => {
  it('writes the accepted way as care, after which nothing need be cut', async () => {
    const out = join(site, '..', 'cut.site.geojson');
    const asked = ['--year', '1', '--json', '--quiet'];
    const { status, stdout, stderr } = await run('cuts', site, ...asked, '--accept', 'fewest', '--out', out);
    expect(stderr).toBe('');
    expect(status).toBe(0);
    const answer = JSON.parse(stdout);
    const [first] = answer.ways;
    expect(first.aims).toContain('fewest');
    expect(first.cautions.length).toBeGreaterThan(2);
    const written = JSON.parse(readFileSync(out, 'utf8'));
    for (const { id, care } of first.cuts) {
      const feature = written.features.find((one: { id: string }) => one.id === id);
      expect(feature.properties.care).toContainEqual(care);
      expect(care.year).toBe(2028);
    }
    const again = await run('cuts', out, ...asked);
    expect(JSON.parse(again.stdout).says).toMatch(/^Nothing need be cut/);
  }, 120_000);

  it('says in one line what is wrong with the call', async () => {
    for (const [args, says] of [
      [['--accept', 'fewest'], /--out belong together/],
      [['--spare', 'none'], /--spare: there is no feature with the id "none"/],
      [['--accept', 'best', '--out', 'x'], /fewest, crop, shelter, standing/],
      [['--layout', 'none'], /--layout/],
    ] as const) {
      const { status, stderr } = await run('cuts', site, ...args, '--quiet');
      expect(status).toBe(2);
      expect(stderr).toMatch(says);
      expect(stderr.trim().split('\n')).toHaveLength(1);
    }
  }, 60_000);
});
