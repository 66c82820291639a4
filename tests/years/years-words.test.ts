import { describe, expect, test } from 'vitest';
import { bandWords, valueWords, yearCurves } from '../../src/panels/years/year-curves.ts';
import type { PatchOutlook } from '../../src/state/model.ts';
import { shareAt } from '../../src/years/share-at.ts';
import type { YearsLook } from '../../src/years/years-look-types.ts';
import { yearsAnswer } from '../../src/years/years-words.ts';
import { fakeYears } from '../state/fake-results.ts';

const turns = (name: string, darkFromYear: number | null, by?: string): PatchOutlook => ({
  id: name,
  name,
  implicit: false,
  shareToKeep: 0.4,
  areaShareToKeep: 0.7,
  year: 20,
  meanLightShare: 0.5,
  areaShareWithEnoughLight: 0.9,
  enoughLight: true,
  years: {
    darkFromYear,
    darkBy: by ? { id: by, label: by } : null,
    looked: [{ year: 0, meanLightShare: 0.9, enoughLight: darkFromYear !== 0 }],
  },
});
const sheltered = (shareIn: (year: number) => number, more: Partial<YearsLook> = {}): YearsLook => {
  const years = fakeYears();
  return {
    ...years,
    crops: null,
    figures: years.figures.map((each, year) => ({ ...each, shelteredShare: shareIn(year) })),
    ...more,
  };
};
const ends = (shareIn: (year: number) => number) =>
  [0, 20, 40].map((year) => ({ shelteredShare: shareIn(year), canopyShare: 0 }));

describe('the answer on the years', () => {
  test('when half the field is in shelter, with its band, and which patch turns dark by what', () => {
    const band = { years: [0, 20, 40], slow: ends((year) => year / 25), fast: ends((year) => year / 14) };
    expect(
      yearsAnswer(
        sheltered((year) => year / 18, { band }),
        [turns('Herb ground', 17, 'Walnut N2')],
      ),
    ).toEqual({
      figure: 'Year 9',
      sentence:
        'Half of Long Meadow is in shelter from then on (7 to 13, as things grow fast or slowly). Herb ground turns dark in year 17, by Walnut N2.',
    });
  });

  test('a slow end that never comes is after the last year', () => {
    const band = { years: [0, 20, 40], slow: ends(() => 0.1), fast: ends((year) => year / 20) };
    expect(
      yearsAnswer(
        sheltered((year) => year / 40, { band }),
        null,
      ).sentence,
    ).toContain('(10 to after 40, as things grow fast or slowly)');
  });

  test('never half of it: the most there is', () => {
    expect(
      yearsAnswer(
        sheltered((year) => Math.min(0.34, year / 50)),
        null,
      ),
    ).toEqual({
      figure: '34 %',
      sentence: 'of Long Meadow is in shelter at most, in year 17: not half of it in any year to 40.',
    });
  });

  test('from the start, and lost again when an edge is felled', () => {
    expect(
      yearsAnswer(
        sheltered((year) => (year < 27 ? 0.8 : 0.2)),
        null,
      ),
    ).toEqual({
      figure: 'From the start',
      sentence: 'half of Long Meadow is in shelter, until year 27.',
    });
  });

  test('the first two patches are told, the rest is counted; none that turns dark is told as well', () => {
    const look = sheltered(() => 1);
    const patches = [
      turns('Low patch', 22, 'Spruce belt'),
      turns('Wood edge', 0, 'Spruce belt'),
      turns('Berry rows', 31, 'Walnut N1'),
      turns('Herb ground', 40, 'Walnut N2'),
    ];
    expect(yearsAnswer(look, patches).sentence).toContain(
      'Wood edge is too dark from the start, by Spruce belt; Low patch turns dark in year 22, by Spruce belt; 2 more by year 40.',
    );
    expect(yearsAnswer(look, [turns('A', null), turns('B', null)]).sentence).toContain(
      'Every patch keeps enough light to year 40.',
    );
    expect(yearsAnswer(look, [{ ...turns('A', null), years: null }]).sentence).toBe(
      'half of Long Meadow is in shelter.',
    );
  });

  test('the first crop and how many bear', () => {
    expect(yearsAnswer(fakeYears(), null).sentence).toContain(
      'The first crop comes in year 8, of Hazel; 1 of 2 trees bear in year 40.',
    );
  });
});

describe('the curves', () => {
  test('values of a year, between years and of counted things', () => {
    expect(shareAt([0, 10], [0, 1], 5)).toBeCloseTo(0.5);
    expect(shareAt([0, 10], [0, 1], 12)).toBe(1);
    const curves = yearCurves(fakeYears(), [turns('A', 10), turns('B', null)]);
    expect(curves.map(({ id }) => id)).toEqual(['shelter', 'light', 'canopy', 'crops']);
    const [shelter, light, , crops] = curves;
    expect(valueWords(shelter, 9)).toBe('45 %');
    expect([valueWords(light, 9), valueWords(light, 10)]).toEqual(['2 of 2', '1 of 2']);
    expect([valueWords(crops, 7), valueWords(crops, 8)]).toEqual(['0 of 2', '1 of 2']);
    expect([bandWords(crops, 7), bandWords(crops, 20)]).toEqual(['0 to 1', null]);
  });
});
