import { describe, expect, test } from 'vitest';
import {
  formatArea,
  formatHours,
  formatLength,
  formatShare,
  formatSpeed,
  landFrom,
  landIn,
  lengthFrom,
  lengthIn,
} from '../../src/state/format-measure.ts';
import { fallInWords } from '../../src/state/format-words.ts';
import { listInWords } from '../../src/units/list-in-words.ts';

describe('measures as a person reads them', () => {
  test.each([
    [3.44, 'metric', '3.4 m'],
    [3.44, 'imperial', '11.3 ft'],
    [281.4, 'metric', '281 m'],
    [-0.04, 'metric', '0.0 m'],
    [Number.NaN, 'metric', '–'],
  ] as const)('length %s, %s', (metres, units, text) => expect(formatLength(metres, units)).toBe(text));

  test.each([
    [850, 'metric', '850 m²'],
    [12_700, 'metric', '1.27 ha'],
    [85, 'imperial', '915 sq ft'],
    [12_700, 'imperial', '3.14 acres'],
  ] as const)('area %s, %s', (squareMetres, units, text) =>
    expect(formatArea(squareMetres, units)).toBe(text),
  );

  test('land in acres of 4,046.856 m2, and back', () => {
    expect(landFrom(1, 'imperial')).toBeCloseTo(4046.856, 3);
    expect(landIn(landFrom(2.5, 'imperial'), 'imperial')).toBeCloseTo(2.5, 12);
    expect(landIn(12_700, 'metric')).toBe(1.27);
  });

  test('speeds, shares and hours', () => {
    expect(formatSpeed(10.8, 'metric')).toBe('10.8 m/s');
    expect(formatSpeed(10.8, 'imperial')).toBe('24 mph');
    expect(formatShare(0.384)).toBe('38 %');
    expect(formatHours(4.08)).toBe('4.1 h');
    expect(formatHours(0.05)).toBe('3 min');
  });

  test('a length typed in feet comes back as it was', () => {
    expect(lengthIn(lengthFrom(20, 'imperial'), 'imperial')).toBeCloseTo(20, 12);
    expect(lengthFrom(20, 'imperial')).toBeCloseTo(6.096, 9);
  });
});

describe('words', () => {
  test('falls', () => {
    expect(fallInWords((Math.atan(1 / 15) * 180) / Math.PI, 135)).toBe('falls 1 in 15 to the south-east');
    expect(fallInWords(0.1, 10)).toBe('level');
    expect(fallInWords((Math.atan(1 / 4.5) * 180) / Math.PI, 0)).toBe('falls 1 in 4.5 to the north');
  });
  test('lists', () => {
    expect(listInWords(['Herb ground'])).toBe('Herb ground');
    expect(listInWords(['Herb ground', 'Low patch'])).toBe('Herb ground and Low patch');
    expect(listInWords(['A', 'B', 'C', 'D', 'E'])).toBe('A, B and 3 more');
  });
});
