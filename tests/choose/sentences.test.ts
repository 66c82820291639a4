import { describe, expect, it } from 'vitest';
import { METRIC } from '../../src/choose/measure-words.ts';
import { comparingSentences, fieldSentences } from '../../src/choose/sentences.ts';
import { shareInWords } from '../../src/units/fraction-words.ts';
import { inventedField, STATE } from './invented-fields.ts';

const growth = { years: 11, quickYears: 7, slowYears: 16 };
const pound = inventedField('Pound Field', {
  state: { windCutGrowing: 0.44, lightGrowing: 0.76, shelterEnoughShare: 0.95, bothShare: 0.8 },
  beltNeededM: 0,
  withoutOwners: [
    {
      owner: 'the neighbour',
      noun: 'Norway spruce belts',
      ids: ['a', 'b'],
      figures: { ...STATE, windCutGrowing: 0.1, lightGrowing: 0.95, bothShare: 0.3 },
    },
  ],
});
const lea = inventedField('Upper Lea', {
  state: { shelterEnoughShare: 0, bothShare: 0 },
  beltNeededM: 238,
  shelteredFrom: { slow: null, usual: null, fast: null },
});
const withy = inventedField('Withy Bottom', {
  state: { bothShare: 0.4 },
  ground: { cold: { hollowShare: 0.7, dammedShare: 0.75 } },
  beltNeededM: 30,
});

describe('the sentences that matter', () => {
  it('are made of the figures: a fifth of the light, the wind cut against the field without the edge', () => {
    expect(comparingSentences([lea, pound, withy], growth, METRIC)).toEqual([
      'Pound Field has the most ground with both enough light and enough shelter, 0.80 ha; Withy Bottom has 0.40 ha and Upper Lea has none.',
      'Pound Field gives up a fifth of its light to the neighbour’s Norway spruce belts and has its wind cut by 38 % in return (felled, 0.30 ha of the 0.80 ha that have both would be left); Upper Lea needs 240 m of belt and about eleven years to match it.',
      'On a still night cold air would lie on three quarters of Withy Bottom.',
    ]);
  });

  it('are the same whichever field comes first', () => {
    const one = comparingSentences([lea, pound, withy], growth, METRIC);
    for (const fields of [
      [pound, withy, lea],
      [withy, lea, pound],
    ])
      expect(comparingSentences(fields, growth, METRIC)).toEqual(one);
  });

  it('say ties, and that there is nothing to tell', () => {
    const twin = { ...pound, id: 'Twin', name: 'Twin' };
    expect(comparingSentences([twin, pound], growth, METRIC)[0]).toBe(
      'Pound Field and Twin are alike in ground with both enough light and enough shelter, about 0.80 ha.',
    );
    const bare = { ...lea, id: 'Bare', name: 'Bare' };
    expect(comparingSentences([lea, bare], growth, METRIC)[0]).toBe(
      'None of them has ground worth naming with both enough light and enough shelter as it stands.',
    );
  });

  it('say what planned belts do instead of what new ones would, and what an edge takes without giving', () => {
    const planned = { ...lea, shelteredFrom: { slow: 12, usual: 9, fast: 7 } };
    expect(fieldSentences(planned, growth, METRIC).at(-1)).toBe(
      'It needs 240 m of belt, and with what is planned half of it is in shelter from year 9 on.',
    );
    const shaded = inventedField('Shaded', {
      beltNeededM: 0,
      withoutOwners: [
        {
          owner: 'the mill',
          noun: 'wood',
          ids: ['w'],
          figures: { ...STATE, lightGrowing: 1, windCutGrowing: 0.3 },
        },
      ],
    });
    expect(fieldSentences(shaded, growth, METRIC)[1]).toBe(
      'It gives up a tenth of its light to the mill’s wood and gets no shelter for it.',
    );
  });

  it('name no more than four fields of twenty', () => {
    const many = Array.from({ length: 20 }, (_, k) =>
      inventedField(`Field ${k + 1}`, { state: { bothShare: 0.9 - 0.04 * k - (k > 0 ? 0.02 : 0) } }),
    );
    expect(comparingSentences(many, growth, METRIC)[0]).toBe(
      'Field 1 has the most ground with both enough light and enough shelter, 0.90 ha; Field 2 has 0.84 ha, Field 3 has 0.80 ha, Field 4 has 0.76 ha and the other 16 no more than that.',
    );
  });
});

describe('shares in words', () => {
  it('are parts only where they are near one, and say so', () => {
    expect([0.001, 0.046, 0.1, 0.2, 0.212, 0.225, 0.33, 0.46, 0.75, 0.998].map(shareInWords)).toEqual([
      'next to nothing',
      '5 %',
      'a tenth',
      'a fifth',
      'about a fifth',
      '23 %',
      'a third',
      '46 %',
      'three quarters',
      'all',
    ]);
  });
});
