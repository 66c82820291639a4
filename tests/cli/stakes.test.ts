import { readFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { run } from './run-leeglade.ts';
import { beside, CENTRE, feature, openSite, workFolder } from './small-site.ts';

const work = workFolder();
afterAll(work.remove);

const TREE = feature('t1', 'Point', beside(CENTRE, 2, 1), {
  kind: 'tree',
  tag: 'N1',
  heightM: 8,
  crownForm: 'cone',
  crownRadiusM: 1,
});
const site = work.put('tree.site.geojson', openSite([TREE]));
const asked = ['--of', 'n1', '--date', '2027-06-21', '--times', '10:00,13:20,03:00'];

describe('leeglade stakes', () => {
  it('says where to tape, what checks it, which times are no good, and what is taken for granted', async () => {
    const { status, stdout, stderr } = await run('stakes', site, ...asked);
    expect(stderr).toBe('');
    expect(status).toBe(0);
    expect(stdout).toContain('Shadow of Tree N1 on Monday 21 June 2027, by clocks on Atlantic Daylight Time');
    expect(stdout).toMatch(
      /^Tape from [A-D], [a-z-]+ corner of Small Close, and [A-D], [a-z-]+ corner of Small Close; \d+\.\d\d m apart/m,
    );
    expect(stdout).toMatch(
      /^1\. 10:00 {2}From [A-D] \d+\.\d\d m towards [A-D], then \d+\.\d\d m square to the (left|right)\.$/m,
    );
    expect(stdout).toContain('No stake for 03:00: the sun is not up.');
    expect(stdout).toContain('Tree N1 is 8.0 m tall');
    expect(stdout).toContain('Never look at the sun');
  });

  it('gives the same as JSON, in metres and UTC', async () => {
    const { stdout } = await run('stakes', site, ...asked, '--json');
    const answer = JSON.parse(stdout);
    expect(answer).toMatchObject({ of: 't1', date: '2027-06-21', timeZone: 'America/Halifax', score: null });
    expect(answer.stakes.map(({ utc }: { utc: string }) => utc)).toEqual([
      '2027-06-21T13:00:00.000Z',
      '2027-06-21T16:20:00.000Z',
    ]);
    expect(answer.stakes[0].fromFoot.levelM).toBeGreaterThan(3);
  });

  it('writes the page to take outside', async () => {
    const pdf = `${work.folder}/stakes.pdf`;
    const { status } = await run('stakes', site, ...asked, '--pdf', pdf);
    expect(status).toBe(0);
    expect(readFileSync(pdf).subarray(0, 5).toString()).toBe('%PDF-');
  });

  it('says in one line what is wrong with the call', async () => {
    const wrong = async (...args: string[]) => (await run('stakes', site, ...args)).stderr.trim();
    expect(await wrong('--of', 'oak')).toBe(
      'There is no tree, belt, block, wall or building "oak"; expected one of "t1" (Tree N1).',
    );
    expect(await wrong('--of', 'n1', '--date', '2027-06-21', '--line', 'A')).toBe(
      '--line is "A"; expected two letters of the sketch, such as A,B.',
    );
    expect(await wrong('--of', 'n1', '--date', 'soon')).toBe(
      'The date is "soon"; expected a day such as 2027-06-21.',
    );
    expect(await wrong('--of', 'n1', '--date', '2027-06-21', '--times', '9')).toBe(
      'A time is "9"; expected a clock time such as 09:40.',
    );
  });
});

describe('readings of shadows', () => {
  const kept = async () => {
    const { stdout } = await run('stakes', site, ...asked, '--json');
    const [stake] = JSON.parse(stdout).stakes;
    const [lon, lat] = stake.lonLat;
    // Half a metre further from the tree, in the direction of the shadow.
    const turn = ((stake.sunAzimuthDeg + 180) * Math.PI) / 180;
    const reading = feature('m1', 'Point', beside([lon, lat], 0.5 * Math.sin(turn), 0.5 * Math.cos(turn)), {
      kind: 'measure',
      quantity: 'shadow',
      value: 0.5,
      date: '2027-06-21',
      time: '10:00',
      of: 't1',
    });
    const stray = feature('m2', 'Point', [lon, lat], { kind: 'measure', quantity: 'shadow', of: 't9' });
    return work.put('read.site.geojson', openSite([TREE, reading, stray]));
  };

  it('are scored by leeglade stakes', async () => {
    const { stdout } = await run('stakes', await kept(), ...asked);
    expect(stdout).toContain('Readings: 1 reading: the tip was 0.5 m beyond.');
    expect(stdout).toMatch(
      /2027-06-21 10:00: 0\.5 m beyond, \d+(\.\d)? % of its \d+\.\d m; by itself it fits/,
    );
  });

  it('are noted by leeglade check, and those of nothing named', async () => {
    const { status, stdout } = await run('check', await kept());
    expect(status).toBe(0);
    expect(stdout).toContain('note: Shadow of Tree N1: 1 reading: the tip was 0.5 m beyond.');
    expect(stdout).toContain(
      'measure "m2" is a reading of a shadow that is not scored: of is "t9"; expected',
    );
  });
});
