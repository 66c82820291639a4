import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { run } from './run-leeglade.ts';
import { beside, box, CENTRE, feature, openSite, workFolder } from './small-site.ts';

const work = workFolder();
afterAll(work.remove);

const at = ([lon, lat]: [number, number]) => `${lat},${lon}`;
/** A solid wall 4 m high, 60 m long, 8 m south of the centre. */
const wall = feature('w1', 'LineString', [beside(CENTRE, -30, -8), beside(CENTRE, 30, -8)], {
  kind: 'wall',
  name: 'South wall',
  heightM: 4,
  opticalPorosity: 0,
});
const site = work.put('wall.site.geojson', openSite([wall]));

interface Answer {
  readonly month: number;
  readonly hours: Record<'open' | 'got' | 'toLand' | 'shared', Record<'month' | 'season' | 'year', number>>;
  readonly things: readonly {
    readonly label: string;
    readonly topAltitudeDeg: number;
    readonly topAzimuthDeg: number;
    readonly nearestM: number;
    readonly letsThrough: number;
    readonly hoursTaken: Record<'month' | 'season' | 'year', number>;
  }[];
  readonly sun: readonly { readonly which: string; readonly hours: readonly { clockHour: number }[] }[];
}

describe('leeglade horizon', () => {
  it('gives what a wall takes and how high it stands', async () => {
    const { status, stdout, stderr } = await run(
      'horizon',
      site,
      '--at',
      at(CENTRE),
      '--height',
      '0',
      '--json',
      '--quiet',
    );
    expect(stderr).toBe('');
    expect(status).toBe(0);
    const answer: Answer = JSON.parse(stdout);
    expect(answer.month).toBe(7);
    expect(answer.things.map(({ label }) => label)).toEqual(['South wall']);
    const [seen] = answer.things;
    // Its face is half its width nearer than its line: between 7.7 and 8 m off.
    expect(seen.nearestM).toBeGreaterThan(7.6);
    expect(seen.nearestM).toBeLessThan(8);
    expect(Math.abs(seen.topAltitudeDeg - (Math.atan(4 / 7.85) * 180) / Math.PI)).toBeLessThan(0.6);
    expect(Math.abs(seen.topAzimuthDeg - 180)).toBeLessThan(1);
    expect(seen.letsThrough).toBe(0);
    const { open, got, toLand, shared } = answer.hours;
    for (const period of ['month', 'season', 'year'] as const)
      expect(
        Math.abs(open[period] - got[period] - toLand[period] - shared[period] - seen.hoursTaken[period]),
      ).toBeLessThan(0.3);
    expect(seen.hoursTaken.year).toBeGreaterThan(500);
    expect(answer.sun).toHaveLength(5);
  });

  it('tells it in words, and writes the page', async () => {
    const pdf = join(work.folder, 'horizon.pdf');
    const svg = join(work.folder, 'horizon.svg');
    const { status, stdout } = await run(
      'horizon',
      site,
      '--at',
      at(CENTRE),
      '--month',
      '12',
      '--pdf',
      pdf,
      '--svg',
      svg,
      '--quiet',
    );
    expect(status).toBe(0);
    expect(stdout).toMatch(/South wall: \d+; \d+; \d+/);
    expect(stdout).toContain('December; April–September; the whole year');
    expect(stdout).toContain('corner of Small Close');
    expect(stdout).toContain('Never look at the sun');
    expect(readFileSync(pdf).subarray(0, 5).toString()).toBe('%PDF-');
    expect(readFileSync(svg, 'utf8')).toContain('South wall');
  });

  it('refuses a spot in a building or far away, and a place that is none, in one sentence', async () => {
    const shed = work.put(
      'shed.site.geojson',
      openSite([feature('s1', 'Polygon', [box(CENTRE, 4, 4)], { kind: 'building', heightM: 5 })]),
    );
    const inside = await run('horizon', shed, '--at', at(CENTRE), '--quiet');
    expect(inside.status).toBe(2);
    expect(inside.stderr).toBe('A building or a wall stands on this spot; expected a spot outside.\n');
    const nowhere = await run('horizon', site, '--at', 'over there', '--quiet');
    expect(nowhere.status).toBe(2);
    expect(nowhere.stderr).toContain('is not a place');
    const away = await run('horizon', site, '--at', '-43.6,171.9', '--quiet');
    expect(away.status).toBe(2);
    expect(away.stderr.trim().split('\n')).toHaveLength(1);
    const missing = await run('horizon', site);
    expect(missing.status).toBe(2);
    expect(missing.stderr).toContain('--at');
  });
});
