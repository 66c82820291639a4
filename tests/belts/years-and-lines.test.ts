import { describe, expect, it } from 'vitest';
import { sideWind } from '../../src/belts/belt-side.ts';
import { inOneLine, yearBandWords } from '../../src/belts/belt-words.ts';
import { besideLine, sideOfLine } from '../../src/belts/bridge.ts';
import { latestYear } from '../../src/belts/latest-year.ts';
import { type BeltWhen, firstYearAt } from '../../src/belts/years-to-protect.ts';

describe('the latest year', () => {
  it.each([
    [0, 20, 13],
    [0, 20, 0],
    [0, 20, 20],
    [5, 6, 5],
  ])('from %i to %i that still holds is %i', async (first, last, wanted) => {
    const asked: number[] = [];
    const found = await latestYear(first, last, async (year) => {
      asked.push(year);
      return year <= wanted;
    });
    expect(found).toBe(wanted);
    expect(asked.length).toBeLessThanOrEqual(2 + Math.ceil(Math.log2(Math.max(2, last - first))));
  });

  it('is none where the first does not hold, or there is no year', async () => {
    expect(await latestYear(0, 9, async () => false)).toBeNull();
    expect(await latestYear(3, 2, async () => true)).toBeNull();
  });
});

describe('the first year of a curve', () => {
  it('is read between its years, and rounded up', () => {
    expect(firstYearAt([0, 10, 20], [0, 0.5, 1], 0.5)).toBe(10);
    expect(firstYearAt([0, 10, 20], [0, 0.5, 1], 0.26)).toBe(6);
    expect(firstYearAt([0, 10], [0.4, 0.6], 0.3)).toBe(0);
    expect(firstYearAt([0, 10], [0.1, 0.2], 0.3)).toBeNull();
  });

  it('is said as a band from fast to slow growth', () => {
    const when = (fast: number | null, usual: number | null, slow: number | null, protects = true) =>
      ({ usefulFrom: { fast, usual, slow }, protects, years: [0, 40] }) as unknown as BeltWhen;
    expect(yearBandWords(when(9, 11, 14))).toBe('year 9 to 14');
    expect(yearBandWords(when(8, 8, 8))).toBe('year 8');
    expect(yearBandWords(when(30, 38, null))).toBe('year 30 at the earliest, or after year 40');
    expect(yearBandWords(when(null, null, null))).toBe('after year 40');
    expect(yearBandWords(when(3, 4, 5, false))).toBe('not on this field');
  });
});

describe('a line beside a line', () => {
  it('keeps its distance at corners', () => {
    const moved = besideLine(
      [
        [0, 0],
        [10, 0],
        [10, 10],
      ],
      2,
    );
    expect(moved.map((p) => p.map((v) => Math.round(v * 1000) / 1000))).toEqual([
      [0, 2],
      [8, 2],
      [8, 10],
    ]);
  });
  it('lies on the side of the ground', () => {
    expect(
      sideOfLine(
        [
          [0, 0],
          [10, 0],
        ],
        [[5, 5]],
      ),
    ).toBe(1);
    expect(
      sideOfLine(
        [
          [0, 0],
          [10, 0],
        ],
        [[5, -5]],
      ),
    ).toBe(-1);
  });
});

describe('the wind from a side', () => {
  const rose = (of: (i: number) => number) =>
    Array.from({ length: 16 }, (_, i) => ({
      fromDeg: i * 22.5,
      frequency: of(i),
      meanSpeedMps: 4,
      weibullK: 2,
    }));
  it('is a quarter of an even rose', () => {
    for (const deg of [0, 90, 213])
      expect(
        sideWind(
          rose(() => 1 / 16),
          deg,
        ).share,
      ).toBeCloseTo(0.25, 1);
  });
  it('turns with the rose', () => {
    const found = sideWind(
      rose((i) => (i === 10 ? 1 : 0)),
      225,
    );
    expect(found.share).toBeCloseTo(1, 9);
    expect(found.mostShare).toBeCloseTo(1, 9);
    expect(
      sideWind(
        rose((i) => (i === 10 ? 1 : 0)),
        45,
      ).share,
    ).toBe(0);
  });
});

it('what is wrong is said in one line, gaps counted', () => {
  const finding = (kind: 'too dense' | 'gap') => ({ kind, says: '', cure: '', source: '' });
  expect(inOneLine([finding('too dense'), finding('gap')])).toBe('Too dense; a gap');
  expect(inOneLine([finding('too dense'), finding('gap'), finding('gap')])).toBe('Too dense; 2 gaps');
});
