import { describe, expect, test } from 'vitest';
import { changeOver } from '../../src/numeric/change.ts';

describe('the change from one raster to another', () => {
  test('counts only the cells of the mask that have both values', () => {
    const change = changeOver([1, 2, Number.NaN, 8, 9], [2, 4, 1, Number.NaN, 90], [1, 1, 1, 1, 0]);
    expect(change).toEqual({ before: 1.5, after: 3, widelyBy: 1 });
  });

  test('says what a tenth of the cells changes by at least', () => {
    const before = Array<number>(101).fill(0);
    const after = before.map((_, i) => (i % 2 ? -i : i));
    expect(
      changeOver(
        before,
        after,
        before.map(() => 1),
      )!.widelyBy,
    ).toBe(90);
  });

  test('is none where no cell counts, and refuses rasters of different sizes', () => {
    expect(changeOver([1], [2], [0])).toBeNull();
    expect(() => changeOver([1, 2], [1], [1, 1])).toThrow('got 2, 1 and 2');
  });
});
