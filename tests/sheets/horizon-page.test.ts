import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { expect, test } from 'vitest';
import { lostTable, takesSentence } from '../../src/sheets/horizon-hours.ts';
import { horizonPage } from '../../src/sheets/horizon-page.ts';
import { drawStrip } from '../../src/sheets/horizon-strip.ts';
import { horizonInWords } from '../../src/sheets/horizon-words.ts';
import type { Mark, PageModel, TextMark } from '../../src/sheets/page-model.ts';
import { pagesToPdf } from '../../src/sheets/page-to-pdf.ts';
import { pageToSvg } from '../../src/sheets/page-to-svg.ts';
import { PAPER_SIZES, type PaperSize } from '../../src/sheets/paper.ts';
import { SAMPLE_THINGS, sampleHorizon } from './sample-horizon.ts';

const flat = (marks: readonly Mark[]): Mark[] =>
  marks.flatMap((mark) => (mark.mark === 'clip' ? flat(mark.marks) : [mark]));
const texts = (marks: readonly Mark[]) =>
  flat(marks)
    .filter((mark): mark is TextMark => mark.mark === 'text')
    .map(({ text }) => text);
const said = (page: PageModel) => texts(page.marks).join(' ');

const sample = sampleHorizon();

test('the page says what takes most, where the spot is, how to count fists, and never to look at the sun', () => {
  const page = horizonPage(sample);
  const words = said(page);
  expect(words).toContain(takesSentence(sample, 'season'));
  expect(words).toMatch(/Hedge takes \d+ hours, April–September\./);
  expect(words).toContain('45.10000° N, 64.50000° W');
  expect(words).toContain('north-west corner of Pound Field');
  expect(words).toContain('a fist at the end of your stretched arm is about 10°');
  expect(words).toContain('Never look at the sun');
  expect(words).toContain('season of 2047');
  expect(words).toContain('An estimate, not a guarantee');
  for (const direction of ['north', 'east', 'south', 'west', 'needle 196°', '180°', '3 fists'])
    expect(texts(page.marks)).toContain(direction);
  for (const { label } of SAMPLE_THINGS) expect(words).toContain(label);
});

test.each(Object.keys(PAPER_SIZES) as PaperSize[])('everything lies on %s', (paper) => {
  const { marks, widthMm, heightMm } = horizonPage(sampleHorizon(SAMPLE_THINGS, {}, { paper }));
  for (const mark of marks)
    if (mark.mark === 'text') {
      expect(mark.atMm[0]).toBeGreaterThanOrEqual(9);
      expect(mark.atMm[0]).toBeLessThanOrEqual(widthMm - 9);
      expect(mark.atMm[1]).toBeLessThanOrEqual(heightMm - 9);
    }
});

test('a degree is as long up as along, and north stands at the left end on both hemispheres', () => {
  for (const latDeg of [45, -45]) {
    const input = sampleHorizon(SAMPLE_THINGS, { latDeg });
    const sizes = { perDeg: 2, text: 6, pen: 0.5 };
    const marks = flat(drawStrip(input, 80, sizes, { left: 100, top: 50 }));
    const centres = marks.flatMap((mark) => (mark.mark === 'circle' ? [mark.centreMm] : []));
    const [month] = input.view.sunPaths.filter(({ which }) => which === 'month');
    for (const { azimuthDeg, altitudeDeg } of month.hours)
      expect(
        centres.some(
          ([x, y]) =>
            Math.abs(x - (100 + 2 * azimuthDeg)) < 1e-9 && Math.abs(y - (50 + 2 * (80 - altitudeDeg))) < 1e-9,
        ),
      ).toBe(true);
  }
});

test('a path over the north ends at one end of the strip and begins at the other', () => {
  const input = sampleHorizon([], { latDeg: -45 });
  const marks = flat(drawStrip(input, 80, { perDeg: 1, text: 4, pen: 0.2 }, { left: 0, top: 0 }));
  const paths = marks.flatMap((mark) =>
    mark.mark === 'lines' && mark.stroke.ink === '#7d4f00' ? [mark.linesMm] : [],
  );
  expect(paths).toHaveLength(4);
  for (const lines of paths) {
    expect(lines).toHaveLength(2);
    const ends = [lines[0][lines[0].length - 1], lines[1][0]];
    expect(ends.map(([x]) => x)).toEqual([0, 360]);
    expect(ends[0][1]).toBe(ends[1][1]);
  }
});

test('the rows of the table and what is taken together make up what is missing', () => {
  const { takers, together, got, open } = lostTable(sample, 'season');
  for (const period of ['month', 'season', 'year'] as const) {
    const taken = takers.reduce((sum, { hours }) => sum + hours[period], together.hours[period]);
    expect(got.hours[period] + taken).toBeCloseTo(open.hours[period], 1);
  }
  expect(takers.map(({ hours }) => hours.season)).toEqual(
    takers.map(({ hours }) => hours.season).sort((a, b) => b - a),
  );
});

test('where there are more things than rows, the rest is one row and nothing is lost', () => {
  const many = Array.from({ length: 40 }, (_, i) => ({
    label: `Tree ${i}`,
    crown: {
      x: 14 * Math.sin(i / 6),
      y: 14 * Math.cos(i / 6),
      base: 1,
      top: 9,
      radius: 1,
      depthOn: 0.3,
    },
  }));
  const words = said(horizonPage(sampleHorizon(many)));
  expect(words).toMatch(/\d+ more, each by itself/);
  expect(words).toContain('Sun that reaches the spot');
});

test('an open spot says that nothing takes sun', () => {
  const open = sampleHorizon([]);
  expect(said(horizonPage(open))).toContain('Nothing takes sun from this spot, April–September.');
  expect(said(horizonPage(open))).toContain('100 %');
});

test('the strip in words: what stands where, and where the sun goes', () => {
  const words = horizonInWords(sample);
  expect(words.find((line) => line.startsWith('Tall pine'))).toMatch(
    /in the south, up to 48° \(5 fists\), 11 m off, lets \d+ % through\./,
  );
  expect(words.find((line) => line.startsWith('Barn'))).toContain('lets no light through');
  expect(words.find((line) => line.startsWith('Hedge'))).toContain('from south-west to north-west');
  expect(words.filter((line) => line.startsWith('The sun on'))).toHaveLength(4);
  expect(words).toContain('The land: level all around.');
});

test('lengths are said in the unit of the person', () => {
  const feet = sampleHorizon(SAMPLE_THINGS, {}, { unit: 'ft' });
  expect(said(horizonPage(feet))).toContain('Seen from 1.6 ft above the ground');
  expect(horizonInWords(feet).find((line) => line.startsWith('Tall pine'))).toContain('34 ft off');
});

test('the page is one drawing as SVG and as PDF', () => {
  const page = horizonPage(sample);
  expect(pageToSvg(page)).toContain('width="297mm" height="210mm"');
  const require = createRequire(import.meta.url);
  const font = (name: string) =>
    new Uint8Array(
      readFileSync(require.resolve(`@expo-google-fonts/atkinson-hyperlegible-next/${name}.ttf`)),
    );
  const pdf = pagesToPdf([page], {
    regular: font('400Regular/AtkinsonHyperlegibleNext_400Regular'),
    bold: font('700Bold/AtkinsonHyperlegibleNext_700Bold'),
  });
  expect(new TextDecoder('latin1').decode(pdf.slice(0, 5))).toBe('%PDF-');
});
