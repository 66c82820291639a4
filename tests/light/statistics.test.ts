import { expect, test } from 'vitest';
import { cellStatistics, enoughLight } from '../../src/light/statistics.ts';

test('figures count the cells of the mask that have a value', () => {
  const values = [5, 1, 2, 3, 4, Number.NaN, 99];
  const mask = [1, 1, 1, 1, 1, 1, 0];
  expect(cellStatistics(values, mask)).toEqual({ mean: 3, p10: 1.4, p50: 3, p90: 4.6 });
  expect(cellStatistics([1], [0])).toBeNull();
});

test('a patch has enough light when enough of it keeps its share', () => {
  const shares = Float32Array.of(0.4, 0.4, 0.7, 0.39, 0.2);
  const mask = [1, 1, 1, 1, 1];
  expect(enoughLight(shares, mask, 0.4, 0.6)).toEqual({ enough: true, areaShareWithEnoughLight: 0.6 });
  expect(enoughLight(shares, mask, 0.4, 0.7)?.enough).toBe(false);
  expect(enoughLight(shares, [0, 0, 0, 0, 0], 0.4, 0.7)).toBeNull();
  expect(() => enoughLight(shares, [1], 0.4, 0.7)).toThrow(/mask/);
});
