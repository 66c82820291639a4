import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fromArrayBuffer } from 'geotiff';
import { afterAll, describe, expect, it } from 'vitest';
import type { Summary } from '../../src/batch/summary.ts';
import { run } from './run-leeglade.ts';
import { beside, CENTRE, feature, openSite, workFolder } from './small-site.ts';

const work = workFolder();
afterAll(work.remove);

const site = work.put(
  'ends.site.geojson',
  openSite([
    feature('t1', 'Point', CENTRE, {
      kind: 'tree',
      status: 'planned',
      species: 'Juglans regia',
      plantedYear: 2027,
    }),
    feature('b1', 'LineString', [beside(CENTRE, -15, -12), beside(CENTRE, -15, 12)], {
      kind: 'belt',
      status: 'planned',
      species: 'Alnus cordata',
      plantedYear: 2027,
    }),
  ]),
);
const computed = async (command: 'light' | 'shelter', ...more: string[]) => {
  const out = join(work.folder, [command, ...more].join(''));
  const ran = await run(command, site, '--out', out, '--cell', '3', '--threads', '1', '--quiet', ...more);
  expect(ran).toMatchObject({ status: 0, stderr: '' });
  return {
    ...ran,
    summary: JSON.parse(readFileSync(join(out, 'summary.json'), 'utf8')) as Summary,
  };
};

describe('the ends of what is not known, on the command line', () => {
  it.each([
    ['light', 'lightShareSeason', ['crown-spread', 'engine', 'foliage', 'growth']],
    ['shelter', 'windShareSeason', ['crown-spread', 'engine', 'foliage', 'growth']],
  ] as const)(
    '%s gives each end the size by which the map computed at it differs',
    async (command, quantity, causes) => {
      const { summary, stdout } = await computed(command, '--ends');
      expect(summary.end).toBeNull();
      const changes = summary.whatWouldChangeIt!;
      expect(changes.quantity).toBe(quantity);
      const [area] = changes.areas;
      expect(area).toMatchObject({ id: 'f1', name: 'Small Close' });
      expect(area.expected).toBeCloseTo(summary.fields[0][quantity]!.mean, 4);
      expect(area.causes.map(({ cause }) => cause).sort()).toEqual(causes);
      const [top] = area.causes;
      expect(top.cause).not.toBe('engine');
      expect(stdout).toContain(`Small Close: ${top.cause} would change it most`);
      for (const { end, mean, change } of top.ends) {
        const there = await computed(command, '--end', end!);
        expect(there.summary.end).toBe(end);
        expect(there.stdout).toContain(`, with ${end}:`);
        expect(there.summary.whatWouldChangeIt).toBeUndefined();
        // The summary carries four decimals.
        expect(mean).toBeCloseTo(there.summary.fields[0][quantity]!.mean, 3);
        expect(Math.abs(mean - area.expected - change)).toBeLessThan(2e-4);
      }
    },
  );

  it('an unknown end, or an end of both kinds, is a wrong call', async () => {
    const unknown = await run('light', site, '--end', 'tall-crowns');
    expect(unknown.status).toBe(2);
    expect(unknown.stderr).toContain('wide-crowns');
    const both = await run('light', site, '--end', 'wide-crowns', '--ends');
    expect(both.status).toBe(2);
    expect(both.stderr.split('\n')).toHaveLength(2);
  });
});

describe('leeglade light --first-last', () => {
  it('writes first and last sun by month as rasters and as a table with the clock', async () => {
    const { stdout, summary } = await computed('light', '--first-last');
    const out = join(work.folder, 'light--first-last');
    expect(stdout).toMatch(
      /Small Close, 15 June: first sun 0\d:\d\d, last (19|20):\d\d on half of its ground/,
    );
    expect(stdout).toContain('first-sun.tif, last-sun.tif, day-sun-hours.tif, first-last-sun.csv');
    const image = await (
      await fromArrayBuffer(new Uint8Array(readFileSync(join(out, 'first-sun.tif'))).buffer)
    ).getImage();
    expect(image.getSamplesPerPixel()).toBe(12);
    expect(image.getWidth() * image.getHeight()).toBe(summary.cells);
    const table = readFileSync(join(out, 'first-last-sun.csv'), 'utf8').trim().split('\n');
    expect(table[0]).toBe(
      'id,name,day,sunrise,firstSunMedian,lastSunMedian,sunset,sunHoursMean,shareWithoutSun,stepMin',
    );
    expect(table).toHaveLength(13);
    const [id, name, day, sunrise, first, last, sunset] = table[12].split(',');
    expect([id, name, day]).toEqual(['f1', 'Small Close', '15 December']);
    expect([sunrise, first, last, sunset]).toEqual([sunrise, first, last, sunset].sort());
  });
});
