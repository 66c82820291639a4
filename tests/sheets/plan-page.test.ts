import { describe, expect, it } from 'vitest';
import type { Mark, PageModel, TextMark } from '../../src/sheets/page-model.ts';
import { pageToSvg } from '../../src/sheets/page-to-svg.ts';
import type { PlanTree } from '../../src/sheets/plan-input.ts';
import { planPages } from '../../src/sheets/plan-page.ts';
import { BadInputError } from '../../src/units/bad-input.ts';
import { offset, samplePlan } from './sample-plan.ts';

const centre = [-64.5, 45.1] as const;
const flat = (marks: readonly Mark[]): Mark[] =>
  marks.flatMap((mark) => (mark.mark === 'clip' ? flat(mark.marks) : [mark]));
const texts = (page: PageModel) => flat(page.marks).filter((mark): mark is TextMark => mark.mark === 'text');
const words = (page: PageModel) => texts(page).map((text) => text.text);

describe('the plan page', () => {
  it('says what it shows, of when, at what scale, and how it lies', () => {
    const [page] = planPages(samplePlan(centre));
    const said = words(page);
    expect(said).toContain('Sorrel Bank');
    expect(said).toContain('3 March 2027');
    expect(said).toContain('1 : 1 000');
    expect(said).toContain('N');
    expect(said.join(' ')).toContain('year 20 after planting (season of 2047)');
    expect(said.join(' ')).toContain('UTM zone 20N lies 1.1° west of it');
    expect(said.join(' ')).toContain('A compass points 16.4° west of it');
    expect(said.join(' ')).toContain('An estimate, not a guarantee');
  });

  it('names every band with its range, and every sign that is used and no other', () => {
    const [page] = planPages(samplePlan(centre));
    const said = words(page);
    for (const band of [
      'open, 84 % and more',
      'fruiting light, 68 to 84 %',
      'light shade, 50 to 68 %',
      'half shade, 30 to 50 %',
      'deep shade, under 30 %',
      'belt',
      'belt, planned',
      'nut tree',
    ])
      expect(said).toContain(band);
    expect(said).not.toContain('wood or block');
  });

  it('draws the lines at chosen values with their value along them, and says in the legend what they are', () => {
    const [page] = planPages(samplePlan(centre));
    expect(words(page)).toContain('40 %, the light to keep');
    const along = texts(page).filter(({ text }) => text === '40 %');
    expect(along.length).toBeGreaterThan(0);
    // At 1 : 1,000: the value is met 20 m to the east and 25 m to the north and south of a place 50 m west of the centre.
    const heavy = flat(page.marks).flatMap((mark) =>
      mark.mark === 'lines' && mark.stroke.widthMm === 0.5 ? mark.linesMm.flat() : [],
    );
    const rows = heavy.map(([, y]) => y);
    expect(Math.max(...rows) - Math.min(...rows)).toBeCloseTo(50, 0);
    const middle = (Math.max(...rows) + Math.min(...rows)) / 2;
    const east = Math.max(...heavy.filter(([, y]) => Math.abs(y - middle) < 1).map(([x]) => x));
    const west = Math.min(...heavy.filter(([, y]) => Math.abs(y - middle) > 24).map(([x]) => x));
    expect(east - west).toBeGreaterThan(20);
    expect(east - west).toBeLessThan(28);
  });

  it('says what would change the map most, and what it is drawn with instead of what is expected', () => {
    const [page] = planPages(samplePlan(centre));
    expect(words(page).join(' ')).toContain(
      'What would change it most. If crowns grow a fifth wider: 12 % darker.',
    );
    const { bandMap } = samplePlan(centre);
    const [wider] = planPages(
      samplePlan(centre, {
        bandMap: { ...bandMap!, supposed: 'crowns a fifth wider', whatWouldChange: null },
      }),
    );
    expect(words(wider).join(' ')).toContain('drawn with crowns a fifth wider');
    expect(words(wider).join(' ')).not.toContain('What would change it');
  });

  it('draws each crown at its spread in the chosen year and tags it', () => {
    const input = samplePlan(centre);
    const [page] = planPages(input);
    const radii = flat(page.marks)
      .filter((mark) => mark.mark === 'circle')
      .map((mark) => mark.radiusMm);
    for (const tree of input.trees) {
      expect(words(page)).toContain(tree.tag);
      if (tree.inYear)
        expect(radii.some((radius) => Math.abs(radius - tree.inYear!.spreadM / 2) < 1e-9)).toBe(true);
    }
  });

  it('lists every tree once, going on over further pages where the list is long', () => {
    const trees: PlanTree[] = Array.from({ length: 140 }, (_, i) => ({
      tag: `T${i + 1}`,
      name: `Malus number ${i + 1}`,
      lonLat: offset([...centre], (i % 14) * 4 - 28, Math.floor(i / 14) * 4 - 20),
      role: 'other',
      planned: true,
      now: null,
      inYear: { heightM: 4, spreadM: 3 },
    }));
    const pages = planPages(samplePlan(centre, { trees }));
    expect(pages.length).toBeGreaterThan(1);
    const listed = pages.flatMap((page) => words(page)).filter((text) => text.startsWith('Malus number'));
    expect(listed).toEqual(trees.map((tree) => tree.name));
    expect(words(pages[1])).toContain('Trees, continued');
  });

  it('keeps every text of the sheet inside the margins', () => {
    for (const paper of ['A4', 'A3', 'Letter', 'Legal'] as const)
      for (const orientation of ['portrait', 'landscape'] as const)
        for (const page of planPages(samplePlan(centre, { paper, orientation })))
          for (const text of texts(page).filter((mark) => !mark.haloMm)) {
            expect(text.atMm[0]).toBeGreaterThanOrEqual(9);
            expect(text.atMm[0]).toBeLessThanOrEqual(page.widthMm - 9);
            expect(text.atMm[1]).toBeLessThanOrEqual(page.heightMm - 9);
          }
  });

  it('says so when the chosen scale leaves part of the site outside', () => {
    const said = words(planPages(samplePlan(centre, { scale: 200 }))[0]).join(' ');
    expect(said).toContain('Part of the site lies outside this sheet.');
  });

  it('fits a site with nothing drawn on it', () => {
    const pages = planPages(
      samplePlan(centre, {
        fields: [],
        belts: [],
        buildings: [],
        patches: [],
        paths: [],
        trees: [],
        bandMap: null,
      }),
    );
    expect(pages).toHaveLength(1);
    expect(words(pages[0]).join(' ')).not.toContain('NaN');
  });

  it('refuses a scale that is no scale', () => {
    expect(() => planPages(samplePlan(centre, { scale: 0 }))).toThrow(BadInputError);
  });

  it('escapes what a person typed', () => {
    const [page] = planPages(samplePlan(centre, { siteName: 'Rock & <Hill>' }));
    expect(pageToSvg(page)).toContain('Rock &amp; &lt;Hill&gt;');
  });
});
