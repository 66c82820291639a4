import { readFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { bytesOf, plainHour, tmy3 } from '../weather/weather-files.ts';
import { run } from './run-leeglade.ts';
import { openSite, workFolder } from './small-site.ts';

const work = workFolder();
afterAll(work.remove);
const json = async (path: string) => JSON.parse((await run('wind', path, '--json')).stdout);

describe('leeglade wind', () => {
  it('says the wind by season and direction, Beaufort’s signs in hours, and what it rests on', async () => {
    const { status, stdout, stderr } = await run('wind', work.put('west.site.geojson', openSite()));
    expect(stderr).toBe('');
    expect(status).toBe(0);
    expect(stdout).toContain('The wind at Small Close');
    expect(stdout).toContain('Most often from the west (100 % of the hours); mean 5.0 m/s, calm 0 %.');
    // 183 days of 24 hours times exp(-(pi/4)(10.8/5)^2) = 0.02564.
    expect(stdout).toMatch(/large branches move, wires hum +Beaufort {2}6, 10\.8 m\/s: +113 +112/);
    expect(stdout).toContain('Measured 10 m above open farmland');
    expect(stdout).toContain('Assumed: wind: the site’s land as rough as where it was measured.');
  });

  it('moves the wind of a weather file to the site’s land, and gives figures as JSON', async () => {
    work.put(
      'station.csv',
      tmy3((hour) => ({ ...plainHour(hour), from: 90, speed: 6 })),
    );
    const site = (wind: object | null) =>
      work.put('file.site.geojson', openSite([], { weatherFile: 'station.csv', wind }));
    const asMeasured = await json(site(null));
    expect(asMeasured).toMatchObject({ restsOn: 'file', heightM: 10, hoursOfFile: { hours: 8760 } });
    expect(asMeasured.growing.sectors[4]).toMatchObject({ fromDeg: 90, frequency: 1 });
    expect(asMeasured.growing.meanSpeedMps).toBeCloseTo(6, 5);
    const moved = await json(site({ measuredRoughnessM: 0.03, siteRoughnessM: 0.25 }));
    expect(moved.moved).toMatchObject({ heightM: 10, roughnessM: 0.25 });
    expect(moved.growing.meanSpeedMps).toBeCloseTo(6 * 0.88072, 3);
    expect(moved.assumed).toEqual([]);
  });

  it('reads a stranger’s table of winds beside the site file', async () => {
    const lines = Array.from({ length: 366 * 24 }, (_, i) => {
      const stamp = new Date(Date.UTC(2024, 0, 1, i)).toISOString().slice(0, 16).replace('T', ' ');
      return `${stamp};${i % 10 === 0 ? '0,0' : '7,2'};${i % 10 === 0 ? 'Calm' : i % 2 ? '0' : '360'}`;
    });
    work.put('gauge.csv', `Local time;Wind speed 10 m (km/h);Wind direction\n${lines.join('\n')}\n`);
    const answer = await json(
      work.put('gauge.site.geojson', openSite([], { weatherFile: 'gauge.csv', wind: null })),
    );
    expect(answer.growing.calmShare).toBeCloseTo(0.1, 3);
    expect(answer.growing.sectors[0].frequency).toBeCloseTo(0.9, 3);
    expect(answer.growing.sectors[0].meanSpeedMps).toBeCloseTo(2, 5);
  });

  it('writes the page', async () => {
    const pdf = `${work.folder}/wind.pdf`;
    const site = work.put('west.site.geojson', openSite());
    const { status, stdout } = await run('wind', site, '--pdf', pdf, '--unit', 'mph', '--paper', 'Letter');
    expect(status).toBe(0);
    expect(stdout).toContain('mean 11.2 mph');
    expect(readFileSync(pdf).subarray(0, 5).toString()).toBe('%PDF-');
  });

  it('says in one line what is wrong', async () => {
    const bad = work.put('bad.site.geojson', openSite([], { wind: { siteRoughnessM: 9 } }));
    const { status, stderr } = await run('wind', bad);
    expect(status).toBe(2);
    expect(stderr.trim()).toBe(
      'bad.site.geojson: site.wind.siteRoughnessM is 9; expected a number of 5 or less.',
    );
    const low = openSite([], {
      wind: {
        heightM: 0.4,
        measuredRoughnessM: 0.5,
        sectors: [{ fromDeg: 0, frequency: 1, meanSpeedMps: 3 }],
      },
    });
    expect((await run('wind', work.put('low.site.geojson', low))).stderr.trim()).toBe(
      'low.site.geojson: site.wind.heightM is 0.4; expected a height above the roughness length of the land where it was measured.',
    );
    work.put('not.csv', new TextDecoder().decode(bytesOf('a,b\n1,2\n')));
    const stray = work.put('stray.site.geojson', openSite([], { weatherFile: 'not.csv', wind: null }));
    expect((await run('wind', stray)).stderr).toContain('not.csv is no weather file that is known here');
  });
});
