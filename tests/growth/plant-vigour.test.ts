import { describe, expect, it } from 'vitest';
import {
  expectedHeightM,
  isBelievable,
  type MeasuredPlant,
  plantVigour,
} from '../../src/growth/plant-vigour.ts';
import { woodySizeAt } from '../../src/growth/size-at-year.ts';

const curve = { maxHeightM: 20, ratePerYear: 0.06, shape: 1.6 };
const plant = (vigour: number, seasons: readonly number[], factor = 1): MeasuredPlant => {
  const start = { curve, rootstockFactor: 1, startM: 0.6 };
  return {
    ...start,
    species: 'a',
    readings: seasons.map((each) => ({
      seasons: each,
      heightM: factor * expectedHeightM(start, vigour, each),
    })),
  };
};

describe('the expected height of a plant', () => {
  it('is what the model gives it at the end of each season', () => {
    for (const vigour of [0.6, 1, 1.4])
      for (const seasons of [1, 4, 12, 40]) {
        const { heightM } = woodySizeAt(
          { curve, status: 'planned', plantedYear: 2020, heightM: 0.6, vigour },
          2020 + seasons - 1,
          2027,
          'usual',
        )!;
        const ours = expectedHeightM({ curve, rootstockFactor: 1, startM: 0.6 }, vigour, seasons);
        expect(ours).toBeCloseTo(heightM, 9);
      }
  });
});

describe('the vigour of a plant', () => {
  it('is that which its heights were made with', () => {
    for (const vigour of [0.5, 0.8, 1, 1.25, 1.7])
      expect(Math.exp(plantVigour(plant(vigour, [5, 9, 15])).logVigour)).toBeCloseTo(vigour, 2);
  });

  it('is known the better the longer ago it was planted, and not at all on the day', () => {
    const variance = (seasons: readonly number[]) => plantVigour(plant(1.2, seasons)).variance;
    expect(variance([20])).toBeLessThan(variance([3]));
    expect(variance([10, 20])).toBeLessThan(variance([20]));
    // At 20 seasons a height follows the vigour nearly one to one: 7 % of reading is 7 % of vigour, or a little more.
    expect(Math.sqrt(variance([20]))).toBeGreaterThan(0.05);
    expect(Math.sqrt(variance([20]))).toBeLessThan(0.12);
  });

  it('is refused where no believable one explains the reading', () => {
    const at = (heightM: number) => isBelievable(plant(1, []), { seasons: 10, heightM });
    const usualM = expectedHeightM(plant(1, []), 1, 10);
    expect(at(usualM)).toBe(true);
    expect(at(usualM * 1.5)).toBe(true);
    expect(at(usualM * 4)).toBe(false);
    expect(at(usualM * 0.1)).toBe(false);
    // A metre read as a foot.
    expect(at(usualM / 0.3048)).toBe(false);
  });
});
