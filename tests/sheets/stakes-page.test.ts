import { describe, expect, it } from 'vitest';
import { surroundings } from '../../src/outside/surroundings.ts';
import { tapeText } from '../../src/outside/tape-words.ts';
import type { LineMark, Mark, PageModel, TextMark } from '../../src/sheets/page-model.ts';
import { stakesPages } from '../../src/sheets/stakes-page.ts';
import { planStakes } from '../../src/stakes/plan-stakes.ts';
import { LONGEST_M } from '../../src/stakes/stake-plan.ts';
import { beside, documentOf, HERE, POINTED, stakedSite, thing } from '../stakes/staked-site.ts';

const site = stakedSite(documentOf([thing('t1', 'Point', beside(HERE, 20, 10), POINTED)]));
const inputFor = (times: readonly string[] | null, unit: 'm' | 'ft' = 'm') => {
  const plan = planStakes(site, 't1', { date: '2027-06-21', times, longestM: LONGEST_M, line: null });
  return {
    paper: 'A4' as const,
    unit,
    siteName: 'Small Close',
    layoutName: null,
    madeOn: '1 June 2027',
    date: plan.date,
    day: 'Monday 21 June 2027',
    clocks: 'clocks on Atlantic Daylight Time',
    frame: site.frame,
    declinationDeg: -16,
    plan,
    around: surroundings(site, plan.date),
    ground: 'Level ground',
  };
};
const flat = (marks: readonly Mark[]): Mark[] =>
  marks.flatMap((mark) => (mark.mark === 'clip' ? flat(mark.marks) : [mark]));
const words = (pages: readonly PageModel[]) =>
  pages
    .flatMap((page) => flat(page.marks))
    .filter((mark): mark is TextMark => mark.mark === 'text')
    .map(({ text }) => text);

describe('the page of shadow stakes', () => {
  it('has a row of taped lengths for each stake, and says what to mind', () => {
    const input = inputFor(['10:00', '13:00', '16:00', '03:00']);
    const said = words(stakesPages(input));
    for (const { time, alongLine, fromA, fromB } of input.plan.stakes)
      for (const text of [time, tapeText(fromA.tapeM, 'm'), tapeText(fromB.tapeM, 'm')]) {
        expect(said).toContain(text);
        expect(said.join(' ')).toContain(tapeText(alongLine.tapeM, 'm'));
      }
    const all = said.join(' ');
    expect(all).toContain('Never look at the sun');
    expect(all).toContain('03:00: the sun is not up.');
    expect(all).toContain('Tree T1 is 10.0 m tall');
  });

  it('draws the line to tape from as long as its scale says', () => {
    const input = inputFor(['10:00']);
    const [page] = stakesPages(input);
    const scaleText = words([page]).find((text) => text.startsWith('1 : '))!;
    const scale = Number(scaleText.slice(4).replaceAll(/\s/g, ''));
    const heaviest = flat(page.marks)
      .filter((mark): mark is LineMark => mark.mark === 'line')
      .reduce((best, mark) => (mark.stroke.widthMm > best.stroke.widthMm ? mark : best));
    const [[x0, y0], [x1, y1]] = heaviest.pointsMm;
    expect(Math.hypot(x1 - x0, y1 - y0)).toBeCloseTo((input.plan.line.length.levelM * 1000) / scale, 1);
  });

  it('goes on over further pages where there are many stakes, and loses none', () => {
    const times = Array.from({ length: 40 }, (_, i) => {
      const minutes = 9 * 60 + i * 12;
      return `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
    });
    const input = inputFor(times, 'ft');
    const pages = stakesPages(input);
    expect(pages.length).toBeGreaterThan(1);
    const said = words(pages);
    for (const { time } of input.plan.stakes) expect(said.filter((text) => text === time)).toHaveLength(1);
  });

  it('keeps every mark on the sheet', () => {
    for (const page of stakesPages(inputFor(null)))
      for (const mark of page.marks.filter((each): each is TextMark => each.mark === 'text')) {
        expect(mark.atMm[0]).toBeGreaterThanOrEqual(0);
        expect(mark.atMm[0]).toBeLessThanOrEqual(page.widthMm);
        expect(mark.atMm[1]).toBeLessThanOrEqual(page.heightMm - 5);
      }
  });
});
