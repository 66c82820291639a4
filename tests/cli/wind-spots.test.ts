import { readFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { run } from './run-leeglade.ts';
import { beside, CENTRE, feature, openSite, workFolder } from './small-site.ts';

const work = workFolder();
afterAll(work.remove);

const BELT = feature('b1', 'LineString', [beside(CENTRE, -40, -400), beside(CENTRE, -40, 400)], {
  kind: 'belt',
  name: 'West belt',
  heightM: 8,
  widthM: 3,
  opticalPorosityLeafOn: 0.4,
});
const site = work.put('belt.site.geojson', openSite([BELT]));
const asked = ['--of', 'west belt', '--from', '270', '--speed', '6', '--date', '2027-07-10'];

describe('leeglade wind-spots', () => {
  it('says what to expect, where to tape, what makes the range, and what to mind', async () => {
    const { status, stdout, stderr } = await run('wind-spots', site, ...asked);
    expect(stderr).toBe('');
    expect(status).toBe(0);
    expect(stdout).toContain(
      'Wind behind West belt on Saturday 10 July 2027, in a wind from the west (270°) of 6.0 m/s at 10 m, Beaufort 4',
    );
    expect(stdout).toMatch(
      /^2\. 5 heights behind: expect \d+ to \d+ % of the open wind: by the function 2\d % \(\d+ to \d+ % with what is not known here\), behind belts that were measured 22 to 71 %\.$/m,
    );
    expect(stdout).toMatch(
      /From [A-D] \d+\.\d\d m towards [A-D], then \d+\.\d\d m square to the (left|right)\./,
    );
    expect(stdout).toContain('Not known: gusts and meters:');
    expect(stdout).toContain('Do not measure in a gale');
  });

  it('gives the same as JSON, as shares and metres', async () => {
    const { stdout } = await run('wind-spots', site, ...asked, '--heights', '5,10', '--json');
    const answer = JSON.parse(stdout);
    expect(answer).toMatchObject({
      of: 'b1',
      date: '2027-07-10',
      wind: { fromDeg: 270, speedMps: 6 },
      heightM: 8,
      score: null,
    });
    expect(answer.spots.map(({ distanceH }: { distanceH: number }) => Math.round(distanceH))).toEqual([
      5, 10,
    ]);
    expect(answer.spots[0].expected.share).toBeGreaterThan(0.19);
    expect(answer.spots[0].expected.share).toBeLessThan(0.26);
  });

  it('writes the page, and the site with all of it written down, which stakes and check then know', async () => {
    const pdf = `${work.folder}/spots.pdf`;
    const written = `${work.folder}/written.site.geojson`;
    const { status } = await run('wind-spots', site, ...asked, '--pdf', pdf, '--write', written);
    expect(status).toBe(0);
    expect(readFileSync(pdf).subarray(0, 5).toString()).toBe('%PDF-');
    const again = await run('wind-spots', written, ...asked);
    expect(again.stdout).toContain(
      'Readings: No reading yet that can be scored. 4 written down wait for a reading.',
    );
    expect(again.stdout).toMatch(
      /Wind 5 heights behind West belt: written \d+ to \d+ %, by the function \d+ %; waits/,
    );
    const checked = await run('check', written);
    expect(checked.status).toBe(0);
    expect(checked.stdout).toContain('note: Wind behind West belt: No reading yet that can be scored.');
  });

  it('scores what was typed back, and check notes it', async () => {
    const written = `${work.folder}/read.site.geojson`;
    await run('wind-spots', site, ...asked, '--heights', '5', '--write', written);
    const document = JSON.parse(readFileSync(written, 'utf8'));
    const reading = document.features.find(
      ({ properties }: { properties: { kind: string } }) => properties.kind === 'measure',
    );
    Object.assign(reading.properties, {
      date: '2027-07-10',
      openMps: 4,
      spotMps: 2,
      minutes: 10,
      value: 0.5,
    });
    const stray = { ...reading, id: 'm9', properties: { ...reading.properties, of: 'b9' } };
    const read = work.put(
      'read.site.geojson',
      JSON.stringify({ ...document, features: [...document.features, stray] }),
    );
    const { stdout } = await run('wind-spots', read, ...asked);
    expect(stdout).toMatch(
      /Readings: 1 reading: outside the range by the function, inside what was measured behind other belts; \d+ points more wind than the function says\./,
    );
    const checked = await run('check', read);
    expect(checked.stdout).toContain('note: Wind behind West belt: 1 reading:');
    expect(checked.stdout).toContain('is a reading of the wind that is not scored: of is "b9"; expected');
  });

  it('says in one line what is wrong with the call', async () => {
    const wrong = async (...args: string[]) => (await run('wind-spots', site, ...args)).stderr.trim();
    expect(await wrong('--of', 'oak', '--from', '270', '--speed', '6')).toBe(
      'There is no belt, wall, fence or net "oak"; expected one of "b1" (West belt).',
    );
    expect(await wrong('--of', 'b1', '--from', '270', '--speed', '16')).toContain(
      '(Beaufort 7); expected less than 13.9',
    );
    expect(await wrong(...asked, '--heights', '2,far')).toContain('"2,far" is no list of distances');
    expect(await wrong(...asked, '--line', 'A')).toBe(
      '--line is "A"; expected two letters of the sketch, such as A,B.',
    );
  });
});
