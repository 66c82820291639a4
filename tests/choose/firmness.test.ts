import { describe, expect, it } from 'vitest';
import { CHOOSE_ENDS, type ChooseEnd } from '../../src/choose/choose-ends.ts';
import type { FieldFigures } from '../../src/choose/choose-types.ts';
import { firmness } from '../../src/choose/firmness.ts';
import { drawsWords, firmnessSentences } from '../../src/choose/firmness-words.ts';
import { centreWeights, drawnWeights } from '../../src/choose/order-weights.ts';
import { type FieldValues, fieldValues, firstFields, valuesAt } from '../../src/choose/rank-fields.ts';
import { seededRandom } from '../../src/numeric/random.ts';
import type { Matter } from '../../src/site/records/choosing.ts';
import { inventedField } from './invented-fields.ts';

const MATTERS: Matter[] = [
  { measure: 'bothM2' },
  { measure: 'hollowShare' },
  { measure: 'slopeDeg' },
  { measure: 'lightGrowing' },
];
const plain = (...usual: number[]): FieldValues => ({ usual, departures: new Map() });

describe('weights of which the order is known', () => {
  it('keep the order and add to one', () => {
    const random = seededRandom(1);
    for (let k = 0; k < 200; k++) {
      const weights = drawnWeights(5, random);
      expect(weights.reduce((sum, each) => sum + each, 0)).toBeCloseTo(1, 12);
      expect(weights).toEqual(weights.toSorted((a, b) => b - a));
    }
  });

  it('have the rank-order centroid as their mean: 0.611, 0.278, 0.111 for three', () => {
    const centre = centreWeights(3);
    expect(centre.map((each) => Number(each.toFixed(3)))).toEqual([0.611, 0.278, 0.111]);
    const random = seededRandom(2);
    const sums = [0, 0, 0];
    for (let k = 0; k < 20_000; k++)
      for (const [i, weight] of drawnWeights(3, random).entries()) sums[i] += weight / 20_000;
    for (const [i, mean] of sums.entries()) expect(mean).toBeCloseTo(centre[i], 2);
  });

  it('are uniform: with two things the greater weight lies anywhere from a half to one alike', () => {
    const random = seededRandom(3);
    const tenths = new Array(10).fill(0);
    for (let k = 0; k < 20_000; k++)
      tenths[Math.min(9, Math.floor(20 * (drawnWeights(2, random)[0] - 0.5)))]++;
    for (const count of tenths) expect(count / 2000).toBeCloseTo(1, 0.9);
  });
});

describe('how firm a choice is', () => {
  /** Values of a field, drawn: both, hollow, slope, light. */
  const drawn = (random: () => number): number[] => [
    10_000 * random(),
    random(),
    12 * random(),
    0.5 + 0.5 * random(),
  ];
  const departed = (random: () => number, usual: readonly number[]): FieldValues => ({
    usual,
    departures: new Map(
      CHOOSE_ENDS.map((end) => [end, [2000 * (random() - 0.5), 0, 0, 0.1 * (random() - 0.5)]] as const),
    ),
  });

  it('puts a field that is better in everything first in every draw', () => {
    for (let seed = 0; seed < 100; seed++) {
      const random = seededRandom(seed);
      const fields = Array.from({ length: 4 }, () => departed(random, drawn(random)));
      // What is not known moves them alike.
      const alike = fields.map(({ usual }) => ({ usual, departures: fields[0].departures }));
      const worst = (m: number) => Math.min(...fields.map(({ usual }) => usual[m]));
      const most = (m: number) => Math.max(...fields.map(({ usual }) => usual[m]));
      const best = {
        usual: [most(0) + 1, worst(1) - 0.001, worst(2) - 0.001, most(3) + 0.001],
        departures: fields[0].departures,
      };
      const place = seed % 5;
      const found = firmness([...alike.slice(0, place), best, ...alike.slice(place)], MATTERS, seed);
      // At the limits of a quantity, such as no ground at all, fields may be level.
      expect(found.first).toEqual([place]);
      expect(found.firstShare[place]).toBeGreaterThan(0.99);
      const still = firmness(
        [...fields.slice(0, place), best, ...fields.slice(place)].map(({ usual }) => plain(...usual)),
        MATTERS,
        seed,
      );
      expect(still.firstShare[place]).toBe(1);
      expect(still.movesThatChange).toEqual([]);
    }
  });

  it('is the same for fields in any order, and for the same seed', () => {
    for (let seed = 0; seed < 20; seed++) {
      const random = seededRandom(seed);
      const fields = Array.from({ length: 5 }, () => departed(random, drawn(random)));
      const found = firmness(fields, MATTERS, seed);
      expect(firmness(fields, MATTERS, seed)).toEqual(found);
      const turned = firmness(fields.toReversed(), MATTERS, seed);
      expect(turned.firstShare.toReversed()).toEqual(found.firstShare);
      expect(turned.first.map((k) => 4 - k)).toEqual(found.first);
      expect(turned.endsThatChange.map(({ end, first }) => [end, first.map((k) => 4 - k)])).toEqual(
        found.endsThatChange.map(({ end, first }) => [end, first]),
      );
    }
  });

  it('shares a draw between fields that are level, and sums to one', () => {
    const found = firmness([plain(1000, 0, 4, 0.9), plain(1000, 0, 4, 0.9)], MATTERS);
    expect(found.firstShare).toEqual([0.5, 0.5]);
    expect(found.first).toEqual([0, 1]);
  });

  it('does not stretch a difference that is not worth telling to the whole scale', () => {
    // A hundredth of light against half the ground that has both.
    const values = [
      [5000, 0, 4, 0.91],
      [10_000, 0, 4, 0.9],
    ];
    const light: Matter[] = [MATTERS[3], MATTERS[0]];
    const weights = [0.6, 0.4];
    expect(
      firstFields(
        values.map(([both, , , share]) => [share, both]),
        light,
        weights,
      ),
    ).toEqual([1]);
  });

  it('finds the end and the move in the order that alone put another first', () => {
    const slow: ChooseEnd = 'slow-growth';
    const planted: FieldValues = {
      usual: [9000, 0, 9, 0.9],
      departures: new Map([[slow, [-8000, 0, 0, 0]]]),
    };
    const found = firmness([planted, plain(5000, 0, 2, 0.9)], MATTERS);
    expect(found.first).toEqual([0]);
    expect(found.endsThatChange).toEqual([{ end: slow, first: [1] }]);
    expect(found.movesThatChange).toEqual([{ from: 2, to: 0, first: [1] }]);
    const said = firmnessSentences(found, ['Planted', 'Gentle'], MATTERS);
    expect(said[0]).toMatch(/^Planted comes first in \d of 10 draws and Gentle in \d of 10 draws\.$/);
    expect(said[1]).toBe(
      'What is not known would change that alone: with slow growth Gentle would come first.',
    );
    expect(said[2]).toBe('In your order, moving “slope” up two places puts Gentle first.');
  });

  it('takes what an end does on coarse cells, and keeps shares and areas what they can be', () => {
    const field = inventedField('F', { state: { bothShare: 0.05 } });
    const coarse = (bothShare: number): FieldFigures => inventedField('F', { state: { bothShare } });
    const values = fieldValues(
      field,
      new Map<ChooseEnd | null, FieldFigures>([
        [null, coarse(0.2)],
        ['dense-foliage', coarse(0.1)],
        ['open-foliage', coarse(0.3)],
      ]),
      [{ measure: 'bothM2' }],
    );
    expect(values.departures.get('dense-foliage')?.[0]).toBeCloseTo(-1000, 6);
    const at = (foliage: number) => valuesAt(values, [{ measure: 'bothM2' }], { foliage })[0];
    expect(at(1)).toBeCloseTo(1500, 6);
    expect(at(0.5)).toBeCloseTo(1000, 6);
    expect(at(-1)).toBe(0);
  });

  it('counts a field that is never in shelter as later than all that are, and what is not known as the worst', () => {
    const never = inventedField('N', { shelteredFrom: { slow: null, usual: null, fast: null } });
    const late = inventedField('L', { shelteredFrom: { slow: null, usual: 39, fast: 30 } });
    const matters: Matter[] = [{ measure: 'shelteredFromYear' }, { measure: 'toWaterM' }];
    const values = [never, late].map((field) => fieldValues(field, null, matters).usual);
    expect(values[0][0]).toBe(41);
    expect(values[0][1]).toBeNaN();
    expect(firstFields(values, matters, [0.7, 0.3])).toEqual([1]);
  });

  it('is said in tenths, and never as certain as it is not', () => {
    expect([0, 0.02, 0.26, 0.849, 0.97, 1].map(drawsWords)).toEqual([
      'in none',
      'in hardly any',
      'in 3 of 10 draws',
      'in 8 of 10 draws',
      'in nearly every draw',
      'in every draw',
    ]);
  });
});
