import { afterAll, describe, expect, it } from 'vitest';
import { run } from './run-leeglade.ts';
import { beside, box, CENTRE, feature, openSite, workFolder } from './small-site.ts';

const work = workFolder();
afterAll(work.remove);

const wall = feature('w1', 'LineString', [beside(CENTRE, -15, -300), beside(CENTRE, -15, 300)], {
  kind: 'wall',
  name: 'Long wall',
  heightM: 3,
  opticalPorosity: 0,
});
const far = feature('f2', 'Polygon', [box(beside(CENTRE, 500, 0), 20, 20)], {
  kind: 'field',
  name: 'Far Piece',
});
const site = work.put('wall.site.geojson', openSite([wall, far]));

interface Answer {
  readonly fieldName: string;
  readonly sides: readonly {
    readonly facingDeg: number;
    readonly years: readonly {
      readonly heightM: number;
      readonly sentences: readonly string[];
      readonly bins: readonly {
        readonly atM: number;
        readonly lightShare: number;
        readonly windCut: number;
      }[];
    }[];
  }[];
}

describe('leeglade edge', () => {
  it('gives the same figures as JSON, as a table and in words', async () => {
    const json = await run('edge', site, '--edge', 'Long wall', '--json', '--quiet');
    expect(json.stderr).toBe('');
    const answer = JSON.parse(json.stdout) as Answer;
    expect(answer.fieldName).toBe('Small Close');
    expect(answer.sides).toHaveLength(1);
    expect(answer.sides[0].facingDeg).toBeCloseTo(90, 0);
    const [now, later] = answer.sides[0].years;
    expect(now.heightM).toBe(3);
    // A wall does not grow, and nothing else stands there.
    later.bins.forEach((bin, k) => {
      // The sun of another calendar year.
      expect(bin.lightShare).toBeCloseTo(now.bins[k].lightShare, 2);
      expect(bin.windCut).toBeCloseTo(now.bins[k].windCut, 6);
    });
    const light = now.bins.map(({ lightShare }) => lightShare);
    expect(light).toEqual(light.toSorted((a, b) => a - b));

    const csv = await run('edge', site, '--edge', 'w1', '--csv', '--quiet');
    const lines = csv.stdout.trim().split('\r\n');
    expect(lines[0]).toBe(
      'edge,field,side,year,fromM,toM,atM,atHeights,areaM2,lightShare,windCutShare,bothShare,use',
    );
    expect(lines).toHaveLength(1 + now.bins.length + later.bins.length);
    const cells = lines[1].split(',');
    expect(cells.slice(0, 4)).toEqual(['Long wall', 'Small Close', 'east side', '0']);
    expect(Number(cells[9])).toBe(now.bins[0].lightShare);

    const text = await run('edge', site, '--edge', 'w1', '--quiet');
    for (const sentence of now.sentences) expect(text.stdout).toContain(sentence);
    expect(text.stdout).toMatch(/Sun lovers: .* from it \(.* heights\), best about/);
  });

  it('asks for less light where it is told to', async () => {
    const { stdout } = await run(
      'edge',
      site,
      '--edge',
      'w1',
      '--sun-light',
      '0.95',
      '--shade-light',
      '0.6',
      '--wind-cut',
      '0.5',
      '--quiet',
    );
    expect(stdout).toContain(
      'Light enough: 95 % of open light for sun lovers, 60 % for shade-tolerant plants',
    );
    expect(stdout).toContain('For nothing: the first');
  });

  it.each([
    [['--edge', 'hedge'], 'expected one of "w1" (Long wall)'],
    [['--edge', 'w1', '--field', 'Far Piece'], 'no ground of "Far Piece" lies beside Long wall'],
    [['--edge', 'w1', '--sun-light', '0.2'], 'expected shade-tolerant plants to want no more light'],
    [['--edge', 'f1'], 'expected a belt, wood or wall'],
  ])('refuses %j in one line', async (args, line) => {
    const { status, stdout, stderr } = await run('edge', site, ...args, '--quiet');
    expect(status).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toContain(line);
    expect(stderr.trim()).not.toContain('\n');
  });
});
