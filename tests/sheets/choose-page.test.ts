import { describe, expect, it } from 'vitest';
import { choiceOf } from '../../src/choose/choice.ts';
import { FIELD_STATES, type FieldFound } from '../../src/choose/choose-types.ts';
import { METRIC } from '../../src/choose/measure-words.ts';
import { choosePage } from '../../src/sheets/choose-page.ts';
import { LEAF } from '../../src/sheets/inks.ts';
import type { Mark } from '../../src/sheets/page-model.ts';
import { textWidthMm } from '../../src/sheets/text-width.ts';
import type { KnockOut } from '../../src/site/records/choosing.ts';
import { inventedField, STATE } from '../choose/invented-fields.ts';
import { northWind } from '../years/years-site.ts';

/** A field of 50 × 40 m whose west half has light and whose south half has shelter. */
function pictured(name: string): FieldFound {
  const grid = { columns: 25, rows: 20, cellM: 2, westM: 0, northM: 40 };
  const cells = Array.from({ length: 500 }, (_, k) => ({ c: k % 25, r: Math.floor(k / 25) }));
  const maps = {
    lightShare: Float32Array.from(cells, ({ c }) => (c < 12 ? 0.9 : 0.4)),
    windShare: Float32Array.from(cells, ({ r }) => (r < 10 ? 0.9 : 0.4)),
  };
  return inventedField(name, {
    grid,
    mask: new Uint8Array(500).fill(1),
    maps: new Map(FIELD_STATES.map((state) => [state, maps])),
    withoutOwners: [
      {
        owner: 'the neighbour',
        noun: 'belts',
        ids: ['b'],
        figures: { ...STATE, bothShare: 0, windCutGrowing: 0 },
      },
    ],
  });
}
const conditions: KnockOut[] = [
  { measure: 'hollowShare', atMost: 0.1 },
  { measure: 'toWaterM', atMost: 80 },
  { measure: 'shelteredM2', year: 10, atLeast: 6000 },
  { measure: 'slopeDeg', atMost: 3 },
];
const pageOf = (count: number, paper: 'A4' | 'Letter' = 'A4', knockOuts = conditions) =>
  choosePage({
    paper,
    choice: choiceOf(
      northWind([], { choosing: { knockOuts } }),
      Array.from({ length: count }, (_, k) => pictured(`Field ${k + 1}`)),
      null,
    ),
    layout: null,
    units: METRIC,
    madeOn: '1 March 2027',
  });
const texts = (marks: readonly Mark[]) => marks.flatMap((mark) => (mark.mark === 'text' ? [mark] : []));

describe('the page on which fields are compared', () => {
  it('stays on one page for up to twenty fields, on the smaller papers too', () => {
    for (const paper of ['A4', 'Letter'] as const)
      for (const count of [1, 2, 3, 4, 5, 20])
        for (const knockOuts of [[], conditions]) {
          const { marks, widthMm, heightMm } = pageOf(count, paper, knockOuts);
          for (const { atMm, text } of texts(marks)) {
            expect([paper, count, text, atMm[1] <= heightMm - 8]).toEqual([paper, count, text, true]);
            expect(atMm[0]).toBeLessThanOrEqual(widthMm - 9.9);
          }
        }
  });

  it('has as many fields as there is room for, and says that there are more', () => {
    const said = texts(pageOf(20).marks).map(({ text }) => text);
    expect(said.filter((text) => /^Field \d+( \(out\))?$/.test(text))).toHaveLength(5);
    expect(said.join(' ')).toContain('15 more fields are in the table file.');
  });

  it('pictures each field by what its ground has enough of, each kind with an ink of its own', () => {
    const { marks } = pageOf(1, 'A4', []);
    // Bars beside the figures have an ink of their own.
    const filled = marks.flatMap((mark) =>
      mark.mark === 'polygon' && mark.fill && mark.fill !== LEAF ? [mark] : [],
    );
    // Two pictures and the key.
    for (const tint of new Set(filled.map(({ fill }) => fill)))
      expect(filled.filter(({ fill }) => fill === tint)).toHaveLength(3);
    expect(new Set(filled.map(({ fill }) => fill)).size).toBe(4);
    const [light] = filled.filter(({ fill }) => fill === '#f4ecc6');
    const [shelter] = filled.filter(({ fill }) => fill === '#b0cad2');
    const middle = (polygon: typeof light, axis: 0 | 1) =>
      polygon.ringsMm[0].reduce((sum, point) => sum + point[axis], 0) / polygon.ringsMm[0].length;
    // Light lies in the north-west, shelter in the south-east.
    expect(middle(light, 0)).toBeLessThan(middle(shelter, 0));
    expect(middle(light, 1)).toBeLessThan(middle(shelter, 1));
  });

  it('has a small picture beside each figure that leaves room for it, inside its cell', () => {
    const bars = (count: number) =>
      pageOf(count, 'A4', []).marks.flatMap((mark) =>
        mark.mark === 'polygon' && mark.fill === LEAF ? [mark.ringsMm[0]] : [],
      );
    expect(bars(2).length).toBeGreaterThan(20);
    const said = texts(pageOf(5, 'A4', []).marks).filter(({ anchor }) => anchor === 'end');
    for (const bar of bars(5)) {
      const rightMm = Math.max(...bar.map(([x]) => x));
      const baselineMm = Math.max(...bar.map(([, y]) => y));
      const beside = said.filter(
        ({ atMm, text, sizeMm }) =>
          Math.abs(atMm[1] - baselineMm) < 2 &&
          atMm[0] > rightMm &&
          atMm[0] - textWidthMm(text, sizeMm) < rightMm &&
          bar[0][0] < atMm[0],
      );
      expect(beside.map(({ text }) => text)).toEqual([]);
    }
  });
});
