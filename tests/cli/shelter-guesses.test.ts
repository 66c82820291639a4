import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import type { Summary } from '../../src/batch/summary.ts';
import { shelterOptionsOf } from '../../src/cli/shelter-options.ts';
import { SHELTER_GUESSES, USUAL_SHELTER_OPTIONS } from '../../src/wind/shelter-guesses.ts';
import { run } from './run-leeglade.ts';
import { beside, CENTRE, feature, openSite, workFolder } from './small-site.ts';

const work = workFolder();
afterAll(work.remove);
const trees = [-12, -6, 0, 6, 12].flatMap((east) =>
  [-12, -6, 0, 6, 12].map((north) =>
    feature(`t${east},${north}`, 'Point', beside(CENTRE, east, north), {
      kind: 'tree',
      status: 'planned',
      species: 'Malus domestica',
      plantedYear: 2027,
    }),
  ),
);
const site = work.put('orchard.site.geojson', openSite(trees));
const shelter = async (...more: string[]) => {
  const out = join(work.folder, more.join('') || 'usual');
  const ran = await run('shelter', site, '--out', out, '--cell', '3', '--threads', '1', '--quiet', ...more);
  expect(ran).toMatchObject({ status: 0, stderr: '' });
  const summary = JSON.parse(readFileSync(join(out, 'summary.json'), 'utf8')) as Summary;
  return { summary, cut: 1 - summary.fields[0].windShareSeason!.mean };
};

describe('guesses of the shelter engine, on the command line', () => {
  it('every guess has a word that leaves it out and nothing else', () => {
    expect(shelterOptionsOf({})).toEqual(USUAL_SHELTER_OPTIONS);
    const named = SHELTER_GUESSES.map(({ key }) => key);
    expect([...named, 'chainedBelts'].sort()).toEqual(Object.keys(USUAL_SHELTER_OPTIONS).sort());
    for (const { key, word } of SHELTER_GUESSES)
      expect(shelterOptionsOf({ without: [word] })).toEqual({ ...USUAL_SHELTER_OPTIONS, [key]: false });
    expect(shelterOptionsOf({ chained: true }).chainedBelts).toBe(true);
  });
  it('a garden without belts is sheltered by its trees, and open without them; the summary says which', async () => {
    const usual = await shelter();
    expect(usual.cut).toBeGreaterThan(0.1);
    expect(usual.summary.fields[0].horizonSumDeg).toBeCloseTo(0, 1);
    const without = await shelter('--without', 'scattered-trees, landform');
    expect(without.cut).toBe(0);
    expect(without.summary.assumed).toContain('Without our guesses on scattered trees, crests and hollows.');
  });
  it('an unknown guess is a wrong call that names those there are', async () => {
    const ran = await run('shelter', site, '--without', 'gnomes');
    expect(ran.status).toBe(2);
    for (const { word } of SHELTER_GUESSES) expect(ran.stderr).toContain(word);
  });
});
