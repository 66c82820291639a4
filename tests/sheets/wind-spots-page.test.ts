import { describe, expect, it } from 'vitest';
import { surroundings } from '../../src/outside/surroundings.ts';
import { tapeText } from '../../src/outside/tape-words.ts';
import type { Mark, PageModel, TextMark } from '../../src/sheets/page-model.ts';
import { windSpotsPages } from '../../src/sheets/wind-spots-page.ts';
import { planSpots } from '../../src/windspots/plan-spots.ts';
import { rangeText } from '../../src/windspots/spot-words.ts';
import { beltSite, wish } from '../windspots/belt-site.ts';

const site = beltSite({ widthM: 3 });
const pagesFor = (heights: readonly number[], unit: 'm' | 'ft' = 'm') => {
  const plan = planSpots(site, 'b1', wish({ heights }));
  const pages = windSpotsPages({
    paper: 'A4',
    unit,
    siteName: 'Small Close',
    layoutName: null,
    madeOn: '1 July 2027',
    date: plan.date,
    day: 'Saturday 10 July 2027',
    frame: site.frame,
    declinationDeg: -16,
    plan,
    around: surroundings(site, plan.date),
    ground: 'Level ground',
  });
  return { plan, pages };
};
const flat = (marks: readonly Mark[]): Mark[] =>
  marks.flatMap((mark) => (mark.mark === 'clip' ? flat(mark.marks) : [mark]));
const words = (pages: readonly PageModel[]) =>
  pages
    .flatMap((page) => flat(page.marks))
    .filter((mark): mark is TextMark => mark.mark === 'text')
    .map(({ text }) => text);

describe('the page of wind spots', () => {
  it('has a row for each spot with its tapes and what is expected, says how it is done, and what to mind', () => {
    const { plan, pages } = pagesFor([2, 5, 10, 15]);
    expect(pages).toHaveLength(1);
    const said = words(pages);
    for (const { alongLine, fromA, fromB, expected } of plan.spots)
      for (const text of [
        tapeText(alongLine.tapeM, 'm'),
        tapeText(fromA.tapeM, 'm'),
        tapeText(fromB.tapeM, 'm'),
        rangeText(expected),
      ])
        expect(said.join(' ')).toContain(text);
    const all = said.join(' ');
    expect(all).toContain('Do not measure in a gale');
    expect(all).toContain('swap the meters half-way');
    expect(all).toContain('Long belt is 10.0 m tall');
    expect(all).toContain('Not known, at most: ');
  });

  it('goes on over further pages where there are many spots, loses none, and keeps every word on the sheet', () => {
    const heights = Array.from({ length: 30 }, (_, i) => i + 2);
    const { plan, pages } = pagesFor(heights, 'ft');
    expect(pages.length).toBeGreaterThan(1);
    const said = words(pages);
    for (const { fromA } of plan.spots) expect(said).toContain(tapeText(fromA.tapeM, 'ft'));
    for (const page of pages)
      for (const mark of flat(page.marks).filter((each): each is TextMark => each.mark === 'text')) {
        expect(mark.atMm[0]).toBeLessThanOrEqual(page.widthMm);
        expect(mark.atMm[1]).toBeLessThanOrEqual(page.heightMm - 5);
      }
  });
});
