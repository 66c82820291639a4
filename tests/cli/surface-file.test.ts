import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import type { Summary } from '../../src/batch/summary.ts';
import { run } from './run-leeglade.ts';
import { openSite, workFolder } from './small-site.ts';
import { groundM, groundTif, topsTif } from './surface-files.ts';

const work = workFolder();
afterAll(work.remove);

const woods = (xM: number, yM: number) => (Math.max(Math.abs(xM), Math.abs(yM)) > 25 && yM < 0 ? 15 : 0);
for (const [name, bytes] of [
  ['ground.tif', groundTif()],
  ['tops.tif', topsTif(woods)],
  ['heights.tif', topsTif((xM, yM) => woods(xM, yM) - groundM(xM, yM))],
  ['shifted.tif', topsTif((xM, yM) => 3.5 + woods(xM, yM))],
] as const)
  writeFileSync(join(work.folder, name), bytes);

const siteWith = (name: string, site: Record<string, unknown>) =>
  work.put(`${name}.site.geojson`, openSite([], site));
const both = (surfaceFile: string) => ({ terrainFile: 'ground.tif', surfaceFile });

describe('a surface file', () => {
  it('is found sound by check, and named where it is not', async () => {
    expect(await run('check', siteWith('sound', both('tops.tif')))).toMatchObject({ status: 0, stdout: '' });
    const missing = await run('check', siteWith('missing', both('gone.tif')));
    expect(missing.status).toBe(2);
    expect(missing.stdout).toMatch(/problem: site\.surfaceFile is "gone\.tif", which is not at hand/);
    const alone = await run('check', siteWith('alone', { surfaceFile: 'tops.tif' }));
    expect(alone.status).toBe(2);
    expect(alone.stdout).toMatch(
      /problem: site\.surfaceFile is "tops\.tif", but site\.terrainFile names none/,
    );
    const shifted = await run('check', siteWith('shifted', both('shifted.tif')));
    expect(shifted.status).toBe(2);
    expect(shifted.stdout).toMatch(/problem: shifted\.tif lies 3\.5 m above the terrain of ground\.tif/);
  });

  it.each([
    [
      'heights instead of elevations',
      both('heights.tif'),
      /^heights\.tif: most of the surface lies \d+\.\d m or more below/,
    ],
    [
      'no terrain',
      { surfaceFile: 'tops.tif' },
      /^small\.site\.geojson: site\.surfaceFile is "tops\.tif", but site\.terrainFile/,
    ],
    [
      'no file',
      both('gone.tif'),
      /^small\.site\.geojson: site\.surfaceFile is "gone\.tif": there is no such file/,
    ],
    ['other leaves', { ...both('tops.tif'), surfaceLeaves: 'palms' }, /surfaceLeaves.*"palms".*deciduous/],
  ])('with %s ends light in one line', async (_what, site, line) => {
    const { status, stderr } = await run('light', siteWith('small', site), '--quiet', '--threads', '1');
    expect(status).toBe(2);
    expect(stderr.trim().split('\n')).toHaveLength(1);
    expect(stderr).toMatch(line);
  });

  it('takes light, more in leaf than leafless, and says what was assumed', async () => {
    const light = async (name: string, site: Record<string, unknown>): Promise<Summary> => {
      const out = join(work.folder, name);
      const options = ['--out', out, '--cell', '3', '--threads', '1', '--quiet'];
      expect((await run('light', siteWith(name, site), ...options)).status).toBe(0);
      return JSON.parse(readFileSync(join(out, 'summary.json'), 'utf8'));
    };
    const open = await light('open', { terrainFile: 'ground.tif' });
    const leafless = await light('leafless', both('tops.tif'));
    const evergreen = await light('evergreen', { ...both('tops.tif'), surfaceLeaves: 'evergreen' });
    const hours = ({ fields }: Summary) => fields[0].directHoursYear?.mean ?? Number.NaN;
    expect(hours(leafless)).toBeLessThan(0.9 * hours(open));
    expect(hours(evergreen)).toBeLessThan(0.98 * hours(leafless));
    expect(open.assumed.join()).not.toMatch(/woods/i);
    expect(leafless.assumed.join()).toMatch(/tops\.tif.*do not shelter.*lose their leaves/);
    expect(evergreen.assumed.join()).not.toMatch(/lose their leaves/);
  });
});
