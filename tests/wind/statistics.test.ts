import { expect, it } from 'vitest';
import { shelterStatistics } from '../../src/wind/statistics.ts';

const grid = { columns: 3, rows: 2, cellM: 2, westM: 0, northM: 4 };
const growing = [0.4, 0.6, 0.8, 0.9, Number.NaN, 1.1];
const result = {
  grid,
  windShare: Float32Array.from([...growing, ...new Array(12).fill(1)]),
  galeHours: Float32Array.from([10, 20, 30, 40, Number.NaN, 50, ...new Array(12).fill(0)]),
  directions: 1,
};

it('adds up sheltered ground and means over the cells that have a value', () => {
  const all = shelterStatistics(result, 'growing');
  expect(all.cells).toBe(5);
  expect(all.areaM2).toBe(20);
  expect(all.meanShare).toBeCloseTo(0.76, 6);
  expect(all.meanGaleHours).toBeCloseTo(30, 6);
  expect(all.shelteredAreaM2).toEqual({ below50: 4, below70: 8, below85: 12 });
});
it('keeps to its mask and band', () => {
  const some = shelterStatistics(result, 'growing', Uint8Array.of(1, 0, 0, 1, 1, 0));
  expect(some.meanShare).toBeCloseTo(0.65, 6);
  expect(some.shelteredAreaM2).toEqual({ below50: 4, below70: 4, below85: 4 });
  expect(shelterStatistics(result, 'year').meanShare).toBe(1);
  expect(Number.isNaN(shelterStatistics(result, 'year', new Uint8Array(6)).meanShare)).toBe(true);
  expect(() => shelterStatistics(result, 'year', new Uint8Array(5))).toThrow(RangeError);
});
