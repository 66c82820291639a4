import { describe, expect, it } from 'vitest';
import { ageAtHeight, heightAtAge, type Pace } from '../../src/growth/height-curve.ts';
import { woodySizeAt } from '../../src/growth/size-at-year.ts';
import { TEMPERATE_BROADLEAVES } from '../../src/growth/stem-allometry.ts';
import type { WoodyPlant } from '../../src/growth/woody-plant.ts';

const BASE = 2027;
const curve = { maxHeightM: 20, ratePerYear: 0.06, shape: 1.6 };
const spread = { matureHeightM: 20, matureSpreadM: 12, group: TEMPERATE_BROADLEAVES };
const species = { curve, spread, clearStemShare: 0.1 };
const height = (plant: WoodyPlant, year: number, pace: Pace = 'usual') =>
  woodySizeAt(plant, year, BASE, pace)?.heightM ?? null;

describe('a planted tree', () => {
  const plant: WoodyPlant = { ...species, status: 'planned', plantedYear: 2030 };

  it('is not there before it is planted', () => {
    expect(woodySizeAt(plant, 2029, BASE, 'usual')).toBeNull();
    expect(woodySizeAt(plant, 2030, BASE, 'usual')).not.toBeNull();
  });

  it('starts at 0.6 m and has grown one season at the end of its first', () => {
    const startAge = ageAtHeight(curve, 0.6);
    expect(height(plant, 2030)).toBeCloseTo(heightAtAge(curve, startAge + 1), 9);
    expect(height(plant, 2049)).toBeCloseTo(heightAtAge(curve, startAge + 20), 9);
  });

  it('takes a given height as the height at planting', () => {
    const bigger = { ...plant, heightM: 2.5 };
    expect(height(bigger, 2030)).toBeCloseTo(heightAtAge(curve, ageAtHeight(curve, 2.5) + 1), 9);
  });

  it('counts as planted in the base year when no year is given', () => {
    expect(height({ ...species, status: 'planned' }, 2027)).toBe(
      height({ ...plant, plantedYear: 2027 }, 2027),
    );
  });
});

describe('a measured tree', () => {
  it('has its measured height in the base year when no year is given', () => {
    expect(height({ ...species, heightM: 9 }, 2027)).toBeCloseTo(9, 9);
  });

  it('follows the curve from its measured year on, and back before it', () => {
    const plant = { ...species, heightM: 9, measuredYear: 2024 };
    const age = ageAtHeight(curve, 9);
    expect(height(plant, 2027)).toBeCloseTo(heightAtAge(curve, age + 3), 9);
    expect(height(plant, 2020)).toBeCloseTo(heightAtAge(curve, age - 4), 9);
  });

  it('is measured, not planted, where both years are given', () => {
    const plant = { ...species, heightM: 9, measuredYear: 2026, plantedYear: 2005 };
    expect(height(plant, 2026)).toBeCloseTo(9, 9);
    expect(height(plant, 2004)).toBeNull();
  });

  it('stays as it is from 0.95 of the final height on', () => {
    expect(height({ ...species, heightM: 19 }, 2067)).toBe(19);
    expect(height({ ...species, heightM: 26 }, 2067)).toBe(26);
    expect(height({ ...species, heightM: 18.9 }, 2067)).toBeGreaterThan(18.9);
  });

  it('never shrinks on a slow pace', () => {
    for (const heightM of [3, 12, 16, 17, 18.5]) {
      for (const pace of ['slow', 'usual', 'fast'] as const) {
        expect(height({ ...species, heightM }, 2057, pace)!).toBeGreaterThanOrEqual(heightM);
      }
    }
  });

  it('keeps the order of the paces', () => {
    for (const heightM of [0.8, 5, 12, 17.6, 18.7]) {
      const at = (pace: 'slow' | 'usual' | 'fast') => height({ ...species, heightM }, 2047, pace)!;
      expect(at('slow')).toBeLessThanOrEqual(at('usual'));
      expect(at('usual')).toBeLessThanOrEqual(at('fast'));
    }
  });
});

describe('what does not grow or is gone', () => {
  it('keeps its size without a species', () => {
    const plant = { heightM: 7, crownRadiusM: 2, crownBaseM: 1 };
    const size = woodySizeAt(plant, 2060, BASE, 'fast')!;
    expect(size.heightM).toBe(7);
    expect(size.crownRadiusM).toBeCloseTo(2, 12);
    expect(size.crownBaseM).toBe(1);
  });

  it('stands 6 m high, half as wide, where nothing is known of it, and grows from there with a species', () => {
    const size = woodySizeAt({ status: 'existing' }, 2050, BASE, 'usual')!;
    expect(size.heightM).toBe(6);
    expect(size.crownRadiusM).toBeCloseTo(1.5, 9);
    expect(height({ standingHeightM: 12 }, 2050)).toBe(12);
    expect(height(species, 2027)).toBe(6);
    expect(height(species, 2037)).toBeGreaterThan(8);
  });

  it('is gone in the year of its removal', () => {
    const plant = { ...species, heightM: 9, removedYear: 2035 };
    expect(height(plant, 2034)).not.toBeNull();
    expect(height(plant, 2035)).toBeNull();
  });
});

describe('crowns', () => {
  it('reach the species’ spread at full height, and less on a dwarfing rootstock', () => {
    expect(woodySizeAt({ ...species, heightM: 20 }, 2030, BASE, 'usual')!.crownRadiusM).toBeCloseTo(6, 9);
    const dwarf = { ...species, heightM: 8, rootstockFactor: 0.4 };
    const size = woodySizeAt(dwarf, 2060, BASE, 'usual')!;
    expect(size.heightM).toBe(8);
    expect(size.crownRadiusM).toBeCloseTo(2.4, 9);
  });

  it('scale a given radius by the species’ allometry', () => {
    const plant = { ...species, heightM: 9, crownRadiusM: 4 };
    expect(woodySizeAt(plant, 2027, BASE, 'usual')!.crownRadiusM).toBeCloseTo(4, 9);
    const own = woodySizeAt({ ...species, heightM: 9 }, 2057, BASE, 'usual')!;
    const ownNow = woodySizeAt({ ...species, heightM: 9 }, 2027, BASE, 'usual')!;
    const given = woodySizeAt(plant, 2057, BASE, 'usual')!;
    expect(given.crownRadiusM / 4).toBeCloseTo(own.crownRadiusM / ownNow.crownRadiusM, 9);
  });

  it('take a radius without a height as the full-grown one', () => {
    const plant: WoodyPlant = { ...species, plantedYear: 2027, crownRadiusM: 3 };
    const young = woodySizeAt(plant, 2028, BASE, 'usual')!;
    expect(young.crownRadiusM).toBeLessThan(0.5);
    expect(woodySizeAt(plant, 2300, BASE, 'usual')!.crownRadiusM).toBeCloseTo(3, 2);
  });

  it('keep a given base, but below the top of a young tree', () => {
    const measured = { ...species, heightM: 12, crownBaseM: 8 };
    expect(woodySizeAt(measured, 2027, BASE, 'usual')!.crownBaseM).toBe(8);
    expect(woodySizeAt(measured, 2057, BASE, 'usual')!.crownBaseM).toBe(8);
    const planted: WoodyPlant = { ...species, plantedYear: 2027, crownBaseM: 2 };
    for (let year = 2027; year < 2067; year++) {
      const size = woodySizeAt(planted, year, BASE, 'usual')!;
      expect(size.crownBaseM).toBeLessThan(size.heightM);
      expect(size.crownBaseM).toBeLessThanOrEqual(2);
    }
    expect(woodySizeAt(planted, 2060, BASE, 'usual')!.crownBaseM).toBe(2);
  });
});
