import { expect, test } from 'vitest';
import type { ColdFigures } from '../../src/choose/choose-types.ts';
import { coldRanks } from '../../src/choose/cold-words.ts';
import { fractionWords } from '../../src/units/fraction-words.ts';

const units = { depth: (m: number) => `${m.toFixed(0)} m`, area: (m2: number) => `${m2 / 10_000} ha` };
const DRY: ColdFigures = {
  meanDepthM: 0,
  heldDepthM: 0,
  deepestM: 0,
  hollowShare: 0,
  dammedShare: 0,
  drainsThroughM2: 0,
};
const field = (name: string, cold: Partial<ColdFigures>) => ({
  id: name,
  name,
  areaM2: 20_000,
  cold: { ...DRY, ...cold },
});

test('the field with the most held air comes first, and the figures are said in plain words', () => {
  const ranks = coldRanks(
    [
      field('Upper', { drainsThroughM2: 500 }),
      field('Middle', { heldDepthM: 0.2, deepestM: 1, dammedShare: 0.2, hollowShare: 0 }),
      field('Bottom', {
        heldDepthM: 1.5,
        deepestM: 3.1,
        dammedShare: 0.76,
        hollowShare: 0.75,
        drainsThroughM2: 90_000,
      }),
      field('Slope', { drainsThroughM2: 60_000 }),
    ],
    units,
  );
  expect(ranks.map(({ name, rank, holdsSome }) => [name, rank, holdsSome])).toEqual([
    ['Bottom', 1, true],
    ['Middle', 2, true],
    ['Slope', 3, false],
    ['Upper', 3, false],
  ]);
  expect(ranks.map(({ sentence }) => sentence)).toEqual([
    'Bottom holds the most cold air: three quarters of it lies in a hollow up to 3 m deep; the air of 9 ha of ground above comes down into it.',
    'Middle holds less: a fifth of it lies in a hollow up to 1 m deep, and all of that is what stands there holding it back.',
    'Slope lies in no hollow: cold air runs off it, and that of 6 ha of ground above runs through.',
    'Upper lies in no hollow: cold air runs off it.',
  ]);
});

test('the order of the fields does not change their ranks', () => {
  const fields = [1, 2, 3, 4, 5].map((k) =>
    field(`F${k}`, k > 3 ? {} : { heldDepthM: k / 3, dammedShare: 0.5, hollowShare: 0.5, deepestM: k }),
  );
  const expected = coldRanks(fields, units);
  expect(coldRanks(fields.toReversed(), units)).toEqual(expected);
  expect(coldRanks([...fields.slice(2), ...fields.slice(0, 2)], units)).toEqual(expected);
});

test.each([
  [0, 'none'],
  [0.03, 'a corner'],
  [0.22, 'a fifth'],
  [0.35, 'a third'],
  [0.74, 'three quarters'],
  [0.98, 'nearly all'],
  [1, 'all'],
])('%d is said as %s', (share, words) => {
  expect(fractionWords(share)).toBe(words);
});
