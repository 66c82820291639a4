import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import papaparse from 'papaparse';
import { afterAll, describe, expect, it } from 'vitest';
import { fieldGrid } from '../../src/belts/field-cut.ts';
import { patchMasks } from '../../src/scene/patch-masks.ts';
import { siteFrame } from '../../src/scene/site-ground.ts';
import { parseSite } from '../../src/site/parse-site.ts';
import type { FieldFeature } from '../../src/site/records/field.ts';
import { pairOfLayouts } from '../layouts/pair-of-layouts.ts';
import { run } from './run-leeglade.ts';
import { openSite, workFolder } from './small-site.ts';

const { folder, put, remove } = workFolder();
afterAll(remove);
const site = put(
  'pair.site.geojson',
  pairOfLayouts({ prices: { perTree: 25, perBeltM: 4, currency: 'CAD' } }),
);
const PAIR = ['Belts first', 'At once'] as const;

interface Measure {
  group: string;
  what: string;
  unit: string;
  first: unknown;
  second: unknown;
  difference: unknown;
  differs: boolean;
}
const compared = async (...more: string[]) => {
  const { stdout, stderr, status } = await run('layouts', site, ...PAIR, '--json', '--quiet', ...more);
  expect([status, stderr]).toEqual([0, '']);
  return JSON.parse(stdout);
};
const measure = (answer: { measures: Measure[] }, what: string) =>
  answer.measures.find((each) => each.what.startsWith(what))!;

describe('leeglade layouts', () => {
  it('lists the layouts there are, and what they hold', async () => {
    const { stdout, status } = await run('layouts', site);
    expect(status).toBe(0);
    expect(stdout).toContain('Pair Close: 2 layouts, over 0 planned things that are common to all');
    expect(stdout).toContain('Belts first: 3 things of its own, of these 2 trees, 36 m of belt');
    const json = JSON.parse((await run('layouts', site, '--json')).stdout);
    expect(json.layouts.map(({ name, trees }: { name: string; trees: number }) => [name, trees])).toEqual([
      ['Belts first', 2],
      ['At once', 2],
    ]);
    const none = put('none.site.geojson', openSite());
    expect((await run('layouts', none)).stdout).toBe('Small Close: no layouts; everything is common.\n');
  });

  it('says what two of them come to, and gives the table', async () => {
    const { stdout, status } = await run('layouts', site, ...PAIR, '--quiet');
    expect(status).toBe(0);
    expect(stdout).toMatch(/^At once bears 4 to 5 years sooner: half of its bearing trees from year \d+/m);
    expect(stdout).toContain('2 things are in both and not the same (planted in).');
    expect(stdout).toMatch(/^ {2}Trees planted, first +2032 +2027 +−5 years$/m);
    expect(stdout).toMatch(/^ {2}Cost in all +\d+ CAD +\d+ CAD +0 CAD$/m);
    expect(stdout).not.toContain('No cost is made up');
  });

  it('gives the same as JSON and as CSV', async () => {
    const answer = await compared();
    const { stdout } = await run('layouts', site, ...PAIR, '--csv', '--quiet');
    const rows = papaparse.parse<string[]>(stdout.trim()).data;
    expect(rows[0]).toEqual([
      'group',
      'what',
      'unit',
      'growth',
      'Belts first',
      'At once',
      'second less first',
    ]);
    const inTable = (value: unknown) => (value === null ? '' : String(value));
    const expected = (answer.measures as Measure[]).flatMap(
      ({ group, what, unit, first, second, difference }) => {
        const parts = [first, second, difference];
        const banded = parts.some((value) => typeof value === 'object' && value !== null);
        return (banded ? ['slow', 'usual', 'fast'] : ['']).map((growth) => [
          group,
          what,
          unit,
          growth,
          ...parts.map((value) =>
            inTable(banded ? ((value as Record<string, number> | null)?.[growth] ?? null) : value),
          ),
        ]);
      },
    );
    expect(rows.slice(1)).toEqual(expected);
  });

  it('has the wind and the light that the other commands have for each layout', async () => {
    const answer = await compared('--year', '12', '--threads', '1');
    for (const [i, layout] of PAIR.entries()) {
      const out = join(folder, `of-${i}`);
      const common = ['--layout', layout, '--year', '12', '--threads', '1', '--quiet', '--out', out];
      const of = (name: string) => (i === 0 ? measure(answer, name).first : measure(answer, name).second);
      const cellM = ownCellsM(layout);
      await run('shelter', site, ...common, '--cell', String(cellM.wind));
      const { fields } = JSON.parse(readFileSync(join(out, 'summary.json'), 'utf8'));
      expect(of('Wind cut, mean, year 12')).toBeCloseTo(1 - fields[0].windShareSeason.mean, 3);
      await run('light', site, ...common, '--cell', String(cellM.light));
      const { patches } = JSON.parse(readFileSync(join(out, 'summary.json'), 'utf8'));
      expect(of('Share of open light')).toBeCloseTo(patches[0].lightShareSeason.mean, 3);
      expect(of('Patches with enough light')).toBe(patches[0].enoughLight ? 1 : 0);
    }
  });

  it('makes up no cost: without prices it says which are wanted', async () => {
    const unpriced = put('unpriced.site.geojson', pairOfLayouts());
    const { stdout } = await run('layouts', unpriced, ...PAIR, '--quiet');
    expect(stdout).toContain(
      'No cost is made up: give the price of a tree, and of a metre of belt to have it worked out.',
    );
    expect(stdout).not.toContain('Cost in all');
  });

  it('says in one line what is wrong with a call', async () => {
    for (const [args, line] of [
      [['Belts first'], /one layout is named, "Belts first"; expected two to compare, such as "At once"\.$/],
      [
        ['Belts first', 'Nobody'],
        /there is none named "Nobody"; expected one of "Belts first", "At once"\.$/,
      ],
      [[...PAIR, '--share', '2'], /expected a number of share/],
      [[...PAIR, '--csv', '--json'], /cannot be used with option/],
      [['--csv'], /expected the names of two layouts/],
      [[...PAIR, '--field', 'Nowhere'], /Field: there is none named "Nowhere"/],
    ] as const) {
      const { status, stderr } = await run('layouts', site, ...args, '--quiet');
      expect([args, status, stderr.trim().split('\n').length]).toEqual([args, 2, 1]);
      expect(stderr.trim()).toMatch(line);
    }
  });

  it('has beside it --layout on every command that computes for one', async () => {
    for (const command of [
      'light',
      'shelter',
      'horizon',
      'stakes',
      'wind-at',
      'wind-spots',
      'belts',
      'propose-belts',
    ])
      expect((await run(command, '--help')).stdout, command).toContain('--layout <NAME>');
  });
});

/** Cells that the comparison has for the field's wind and for its patch's light, m. */
function ownCellsM(layout: string): { wind: number; light: number } {
  const { document } = parseSite(readFileSync(site, 'utf8'), 'pair');
  const field = document.features.find(({ id }) => id === 'f1') as FieldFeature;
  const frame = siteFrame(document);
  const [patch] = patchMasks(document, {
    frame,
    layout,
    fields: [field],
    readingHeightM: 0.1,
    cellM: 0.5,
    mostCells: 300,
  });
  return { wind: fieldGrid(field, frame, 24).grid.cellM, light: patch.grid.cellM };
}
