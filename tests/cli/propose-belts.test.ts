import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { serialiseSite } from '../../src/site/serialise-site.ts';
import { oddField } from '../belts/proposed-field.ts';
import { run } from './run-leeglade.ts';
import { workFolder } from './small-site.ts';

const work = workFolder();
afterAll(work.remove);
const site = work.put('odd.site.geojson', JSON.parse(serialiseSite(oddField())));

describe('leeglade propose-belts', () => {
  it('writes the site with the belts planned, which the shelter command then finds enough', async () => {
    const out = join(site, '..', 'with-belts.site.geojson');
    const asked = ['--cut', '0.25', '--over', '0.5', '--year', '12'];
    const { status, stdout, stderr } = await run(
      'propose-belts',
      site,
      '--field',
      'Odd corner',
      ...asked,
      '--out',
      out,
      '--json',
      '--quiet',
    );
    expect(stderr).toBe('');
    expect(status).toBe(0);
    const answer = JSON.parse(stdout);
    expect(answer.help).toBeNull();
    const [first] = answer.alternatives;
    expect(first.overShare.usual).toBeGreaterThanOrEqual(0.5);
    expect(first.cautions.length).toBeGreaterThan(2);
    const written = JSON.parse(readFileSync(out, 'utf8'));
    const belts = written.features.filter(
      (one: { properties: { kind: string } }) => one.properties.kind === 'belt',
    );
    expect(belts).toHaveLength(first.belts.length);
    for (const { properties } of belts) {
      expect(properties).toMatchObject({ status: 'planned', plantedYear: 2027 });
      expect(properties.species).toMatch(/^[A-Z]/);
      expect(properties.widthM).toBeGreaterThan(0);
      expect(properties.opticalPorosityLeafOn).toBeLessThan(1);
    }
    const again = await run('propose-belts', out, ...asked, '--json', '--quiet');
    expect(JSON.parse(again.stdout).says).toMatch(/^No belt is needed/);
  }, 120_000);

  it('says in one line what is wrong with the call', async () => {
    for (const [args, says] of [
      [['--field', 'Nowhere'], /there is none named "Nowhere"/],
      [['--cut', '30'], /share/],
      [['--season', 'spring'], /growing, rest, year/],
    ] as const) {
      const { status, stderr } = await run('propose-belts', site, ...args, '--quiet');
      expect(status).toBe(2);
      expect(stderr).toMatch(says);
      expect(stderr.trim().split('\n')).toHaveLength(1);
    }
  });
});
