import { afterAll, describe, expect, it } from 'vitest';
import { run } from './run-leeglade.ts';
import { beside, CENTRE, feature, openSite, workFolder } from './small-site.ts';

const work = workFolder();
afterAll(work.remove);

const belt = feature('b1', 'LineString', [beside(CENTRE, -40, -200), beside(CENTRE, -40, 200)], {
  kind: 'belt',
  name: 'West belt',
  status: 'existing',
  owner: 'the neighbour',
  heightM: 10,
  widthM: 3,
});
const site = work.put('belt.site.geojson', openSite([belt]));
const at = `${CENTRE[1]},${CENTRE[0]}`;

interface Answer {
  readonly windShare: Record<'growing' | 'rest' | 'year', number>;
  readonly evaporationSeasonMm: null | { readonly open: number; readonly here: number };
  readonly sectors: readonly {
    readonly fromDeg: number;
    readonly windShare: { readonly year: number | null };
    readonly by: readonly {
      readonly label: string;
      readonly distanceM: number;
      readonly distanceHeights: number;
    }[];
  }[];
  readonly things: readonly {
    readonly owner: string | null;
    readonly comesBack: { readonly year: number };
  }[];
}

describe('leeglade wind-at', () => {
  it('names the belt, its owner, its distance, and what it is worth', async () => {
    const { status, stdout, stderr } = await run(
      'wind-at',
      site,
      '--at',
      at,
      '--year',
      '0',
      '--json',
      '--quiet',
    );
    expect(stderr).toBe('');
    expect(status).toBe(0);
    const answer = JSON.parse(stdout) as Answer;
    expect(answer.sectors).toHaveLength(1);
    const [west] = answer.sectors;
    expect(west.by).toHaveLength(1);
    expect(west.by[0].label).toBe('West belt');
    expect(west.by[0].distanceM).toBeCloseTo(40, 1);
    expect(west.by[0].distanceHeights).toBeCloseTo(4, 1);
    // One wind alone: its share is the map's, and the belt is all of it.
    expect(west.windShare.year).toBeCloseTo(answer.windShare.year, 4);
    expect(answer.windShare.year).toBeLessThan(0.5);
    expect(answer.things).toHaveLength(1);
    expect(answer.things[0].owner).toBe('the neighbour');
    expect(answer.things[0].comesBack.year).toBeCloseTo(1 - answer.windShare.year, 4);
    expect(answer.evaporationSeasonMm).toBeNull();
  });

  it('says the same in words, and that evaporation needs a weather file', async () => {
    const { stdout } = await run('wind-at', site, '--at', at, '--year', '0', '--quiet');
    expect(stdout).toMatch(/Growing season: cut by \d+ %/);
    expect(stdout).toMatch(
      /W 270\.0° \(100 %, 5\.0 m\/s\): cut by .* by West belt 40\.0 m away, 4\.0 heights/,
    );
    expect(stdout).toContain('West belt (owner: the neighbour): open, open, open; 100 %');
    expect(stdout).toContain('Evaporation needs a weather file');
  });

  it('refuses a place that is none in one line', async () => {
    const { status, stdout, stderr } = await run('wind-at', site, '--at', 'somewhere');
    expect(status).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toContain('is not a place');
    expect(stderr.trim()).not.toContain('\n');
  });
});

describe('leeglade shelter', () => {
  it('sums up the ground in shelter and the evaporation of each field and patch', async () => {
    const { status, stdout } = await run(
      'shelter',
      'data-samples/sorrel-bank/sorrel-bank.site.geojson',
      '--field',
      'Pound Field',
      '--cell',
      '6',
      '--threads',
      '1',
      '--out',
      work.folder,
      '--json',
      '--quiet',
    );
    expect(status).toBe(0);
    const { fields, patches } = JSON.parse(stdout) as Record<
      'fields' | 'patches',
      readonly {
        readonly areaM2: number;
        readonly shelteredAreaM2: Record<'below50' | 'below70' | 'below85', number>;
        readonly evaporationSeason: Record<'openMm' | 'hereMm' | 'reliefMm' | 'reliefShare', number>;
      }[]
    >;
    expect(fields).toHaveLength(1);
    expect(patches.length).toBeGreaterThan(3);
    for (const { areaM2, shelteredAreaM2, evaporationSeason } of [...fields, ...patches]) {
      expect(shelteredAreaM2.below50).toBeLessThanOrEqual(shelteredAreaM2.below70);
      expect(shelteredAreaM2.below85).toBeLessThanOrEqual(areaM2 + 0.001);
      const { openMm, hereMm, reliefMm, reliefShare } = evaporationSeason;
      expect(openMm).toBeGreaterThan(300);
      expect(openMm - hereMm).toBeCloseTo(reliefMm, 2);
      expect(reliefMm / openMm).toBeCloseTo(reliefShare, 3);
      expect(reliefMm).toBeGreaterThan(0);
    }
  });
});
