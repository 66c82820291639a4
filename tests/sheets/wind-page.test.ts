import { describe, expect, it } from 'vitest';
import type { Mark, TextMark } from '../../src/sheets/page-model.ts';
import { petalParts, roseRings } from '../../src/sheets/rose-shape.ts';
import { windPages } from '../../src/sheets/wind-page.ts';
import type { WindPageInput, WindPageSeason } from '../../src/sheets/wind-page-input.ts';

const season = (count: number, lead: number, strongShare: number): WindPageSeason => ({
  hours: 4380,
  calmShare: 0.05,
  meanSpeedMps: 4.2,
  sectors: Array.from({ length: count }, (_, i) => ({
    fromDeg: (i * 360) / count,
    frequency: i === lead ? 0.3 : 0.65 / (count - 1),
    meanSpeedMps: 4.5,
    weibullK: 2,
    weibullScaleMps: 5.08,
    forceShares: [0.1, 0.1, 0.2, 0.2, 0.4 - strongShare, 0, strongShare, 0, 0, 0, 0, 0, 0],
  })),
  hoursFromForce: [4380, 4000, 3500, 2500, 1200, 300, 44, 3, 0.2, 0, 0, 0, 0],
});
const input = (count: number): WindPageInput => ({
  paper: 'A4',
  unit: 'm/s',
  siteName: 'Small Close',
  madeOn: '1 June 2027',
  growingWords: 'April–September',
  growing: season(count, Math.round((count * 225) / 360), 0.05),
  rest: season(count, 0, 0.1),
  signs: Array.from({ length: 13 }, (_, force) => ({
    force,
    name: `force name ${force}`,
    fromMps: force * 2,
    landSign: `sign ${force}`,
  })),
  rests: ['Drawn by hand, as the wind of the site itself.'],
  assumed: ['wind: measured at 10 m'],
});
const texts = (marks: readonly Mark[]) =>
  marks.filter((mark): mark is TextMark => mark.mark === 'text').map(({ text }) => text);

describe('the page of the wind', () => {
  it('has both seasons in words, every direction in figures, the signs in hours and what it rests on', () => {
    const [page, ...more] = windPages(input(16));
    expect(more).toEqual([]);
    const said = texts(page.marks);
    const all = said.join(' ').replaceAll('\u00a0', ' ');
    expect(all).toContain('Growing season, April–September');
    expect(all).toContain('Most often from the south-west (30 % of the hours); mean 4.2 m/s, calm 5 %.');
    for (const text of ['south-west, 225°', '30.0', '5.1, 2.00', 'sign 6', '44', '2,500']) {
      expect(said).toContain(text);
    }
    // A sign that neither season sees for half an hour has no line; calm and light air move nothing.
    expect(said).not.toContain('sign 8');
    expect(said).not.toContain('sign 1');
    expect(all).toContain('Drawn by hand');
    expect(all).toContain('Assumed: measured at 10 m.');
  });
  it('goes on over a second page where there are many directions, all on the sheet', () => {
    const pages = windPages({ ...input(36), paper: 'Letter' });
    expect(pages.length).toBeGreaterThan(1);
    for (const page of pages)
      for (const mark of page.marks.filter((each): each is TextMark => each.mark === 'text')) {
        expect(mark.atMm[0]).toBeLessThanOrEqual(page.widthMm - 9.9);
        expect(mark.atMm[1]).toBeLessThanOrEqual(page.heightMm - 9.9);
      }
  });
});

describe('a petal', () => {
  it('is as long as its share, parted by strength', () => {
    const [petal] = season(16, 0, 0.1).sectors;
    const reach = petalParts(petal, 11.25, 100).map((ring) =>
      Math.max(0, ...ring.map(([x, y]) => Math.hypot(x, y))),
    );
    expect(reach[0]).toBeCloseTo(0.3 * 0.6 * 100, 9);
    expect(reach[1]).toBeCloseTo(0.3 * 0.9 * 100, 9);
    expect(reach[2]).toBeCloseTo(0.3 * 100, 9);
  });
  it('points to where the wind comes from: north up, east to the right', () => {
    const [, , , , east] = season(16, 4, 0.1).sectors;
    const tip = petalParts(east, 11.25, 100)[0].reduce((best, each) => (each[0] > best[0] ? each : best));
    expect(tip[0]).toBeGreaterThan(0);
    expect(Math.abs(tip[1])).toBeLessThan(tip[0] * 0.1);
  });
  it('has rings in round percent that reach beyond the longest', () => {
    expect(roseRings(season(16, 0, 0).sectors).at(-1)).toBeCloseTo(0.3, 9);
    expect(roseRings([{ fromDeg: 0, frequency: 0.12, forceShares: [1] }])).toEqual([
      0.05, 0.1, 0.15000000000000002,
    ]);
  });
});
