import { afterAll, describe, expect, it } from 'vitest';
import { run } from './run-leeglade.ts';
import { beside, CENTRE, feature, openSite, type Place, workFolder } from './small-site.ts';

const work = workFolder();
afterAll(work.remove);

const line = (eastM: number): Place[] => [beside(CENTRE, eastM, -30), beside(CENTRE, eastM, 30)];
const site = work.put(
  'belts.site.geojson',
  openSite([
    feature('b1', 'LineString', line(-40), {
      kind: 'belt',
      name: 'West belt',
      status: 'existing',
      owner: 'the neighbour',
      heightM: 10,
      widthM: 3,
      opticalPorosityLeafOn: 0.2,
    }),
    feature('b2', 'LineString', line(-20), {
      kind: 'belt',
      name: 'Alders',
      status: 'planned',
      species: 'Alnus cordata',
      plantedYear: 2027,
    }),
  ]),
);

interface Answer {
  readonly belts: readonly {
    readonly label: string;
    readonly owner: string | null;
    readonly densityInLeaf: number;
    readonly findings: readonly { readonly kind: string; readonly source: string }[];
    readonly when: null | { readonly usefulFromYear: Record<'slow' | 'usual' | 'fast', number | null> };
    readonly insurance: null | { readonly cutWithEdge: number; readonly cutWithoutEdge: number };
  }[];
}

describe('leeglade belts', () => {
  it('says what is wrong with each, when planned ones protect, and what the loss of a borrowed one means', async () => {
    const { status, stdout, stderr } = await run('belts', site, '--json', '--quiet', '--felled-in', '3');
    expect(stderr).toBe('');
    expect(status).toBe(0);
    const { belts } = JSON.parse(stdout) as Answer;
    const [west, alders] = belts;
    expect(west.densityInLeaf).toBe(0.8);
    expect(west.findings.map(({ kind }) => kind)).toEqual(expect.arrayContaining(['too dense', 'too short']));
    expect(west.when).toBeNull();
    expect(west.insurance!.cutWithoutEdge).toBeLessThan(west.insurance!.cutWithEdge);
    expect(alders.insurance).toBeNull();
    const { slow, usual, fast } = alders.when!.usefulFromYear;
    expect(fast!).toBeLessThanOrEqual(usual!);
    expect(usual!).toBeLessThanOrEqual(slow!);
  });

  it('refuses a field that is not there in one line', async () => {
    const { status, stderr } = await run('belts', site, '--field', 'Nowhere');
    expect(status).toBe(2);
    expect(stderr).toContain('none named "Nowhere"');
  });
});

describe('leeglade shelter --without-feature', () => {
  const share = async (...more: string[]) => {
    const { status, stdout } = await run(
      'shelter',
      site,
      '--cell',
      '3',
      '--threads',
      '1',
      '--json',
      '--quiet',
      '--out',
      work.folder,
      '--year',
      '5',
      ...more,
    );
    expect(status).toBe(0);
    const summary = JSON.parse(stdout) as {
      readonly assumed: readonly string[];
      readonly fields: readonly { readonly windShareSeason: { readonly mean: number } }[];
    };
    return { mean: summary.fields[0].windShareSeason.mean, assumed: summary.assumed };
  };

  it('looks at the field without it from the year of felling on, and says so', async () => {
    const stands = await share();
    const gone = await share('--without-feature', 'West belt');
    expect(gone.mean).toBeGreaterThan(stands.mean);
    expect(gone.assumed.join()).toContain('without West belt');
    expect((await share('--without-feature', 'b1', '--felled-in', '6')).mean).toBe(stands.mean);
    expect((await share('--without-feature', 'b1', '--felled-in', '5')).mean).toBe(gone.mean);
  });

  it('refuses what is not there, and a felling of nothing', async () => {
    const missing = await run('shelter', site, '--without-feature', 'Elms', '--quiet');
    expect(missing.status).toBe(2);
    expect(missing.stderr).toContain('There is no belt, wood or block "Elms"');
    const nothing = await run('shelter', site, '--felled-in', '4', '--quiet');
    expect(nothing.status).toBe(2);
    expect(nothing.stderr).toContain('--felled-in');
  });
});
