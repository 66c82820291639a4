import { describe, expect, it } from 'vitest';
import { CARE_KINDS, type CareEvent, type CareKind } from '../../src/growth/care.ts';
import type { Pace } from '../../src/growth/height-curve.ts';
import { woodySizeAt } from '../../src/growth/size-at-year.ts';
import { TEMPERATE_BROADLEAVES } from '../../src/growth/stem-allometry.ts';
import type { WoodyPlant } from '../../src/growth/woody-plant.ts';
import { seededRandom } from '../../src/numeric/random.ts';

const BASE = 2027;
const FIRST = 2020;
const LAST = 2075;
const ROUNDING_M = 1e-9;
const PACES: readonly Pace[] = ['slow', 'usual', 'fast'];
/** What is done to a plant that stays. */
const CUTS = CARE_KINDS.filter((what) => what !== 'replace');

type Random = () => number;
const between = (random: Random, low: number, high: number) => low + random() * (high - low);
const whole = (random: Random, low: number, high: number) => Math.floor(between(random, low, high + 1));
const oneOf = <T>(random: Random, all: readonly T[]): T => all[whole(random, 0, all.length - 1)];

function drawnPlant(random: Random): WoodyPlant {
  const matureM = between(random, 3, 35);
  const plant: WoodyPlant = {
    curve: {
      maxHeightM: matureM,
      ratePerYear: between(random, 0.02, 0.2),
      shape: between(random, 1, 2.5),
    },
    spread: {
      matureHeightM: matureM,
      matureSpreadM: matureM * between(random, 0.3, 1),
      group: TEMPERATE_BROADLEAVES,
    },
    clearStemShare: between(random, 0, 0.4),
    shootsAgain: random() < 0.8,
    vigour: between(random, 0.8, 1.2),
    ...(random() < 0.3
      ? {
          speeds: {
            firstYear: BASE,
            factor: Float32Array.from({ length: 20 }, () => between(random, 0.7, 2)),
          },
        }
      : {}),
  };
  if (random() < 0.4) return { ...plant, status: 'planned', plantedYear: whole(random, FIRST, 2040) };
  return {
    ...plant,
    heightM: between(random, 0.5, matureM * 1.2),
    ...(random() < 0.5 ? { measuredYear: whole(random, FIRST, 2030) } : {}),
    ...(random() < 0.3 ? { crownBaseM: between(random, 0, 0.4) } : {}),
    ...(random() < 0.3 ? { crownRadiusM: between(random, 0.5, 6) } : {}),
  };
}

function drawnEvent(random: Random, kinds: readonly CareKind[]): CareEvent {
  const year = whole(random, 2021, 2070);
  return {
    what: oneOf(random, kinds),
    year,
    heightM: between(random, 0.3, 15),
    share: random(),
    ...(random() < 0.5 ? { everyYears: whole(random, 1, 15) } : {}),
    ...(random() < 0.3 ? { lastYear: year + whole(random, 0, 30) } : {}),
  };
}

const drawnCare = (random: Random, kinds: readonly CareKind[]): CareEvent[] =>
  Array.from({ length: whole(random, 0, 4) }, () => drawnEvent(random, kinds));

const sizesOf = (plant: WoodyPlant, pace: Pace) =>
  Array.from({ length: LAST - FIRST + 1 }, (_, i) => woodySizeAt(plant, FIRST + i, BASE, pace));
const heightsOf = (plant: WoodyPlant, pace: Pace): number[] =>
  sizesOf(plant, pace).map((size) => size?.heightM ?? 0);

const SEEDS = Array.from({ length: 200 }, (_, i) => i + 1);
function everySeed(check: (random: Random, pace: Pace, seed: number) => void): void {
  for (const seed of SEEDS) {
    const random = seededRandom(seed);
    const pace = oneOf(random, PACES);
    check(random, pace, seed);
  }
}

describe('care, whatever the plant', () => {
  it('lacking, lets it grow or stand and never shrink', () => {
    everySeed((random, pace, seed) => {
      const heights = heightsOf(drawnPlant(random), pace);
      for (let i = 1; i < heights.length; i++)
        expect(heights[i], `seed ${seed}`).toBeGreaterThanOrEqual(heights[i - 1] - ROUNDING_M);
    });
  });

  it('added to whatever is done already, never makes it taller in any year', () => {
    let lower = 0;
    everySeed((random, pace, seed) => {
      const plant = drawnPlant(random);
      const care = drawnCare(random, CUTS);
      const before = heightsOf({ ...plant, care }, pace);
      const after = heightsOf({ ...plant, care: [...care, drawnEvent(random, CUTS)] }, pace);
      after.forEach((heightM, i) => {
        expect(heightM, `seed ${seed}, year ${FIRST + i}`).toBeLessThanOrEqual(before[i] + ROUNDING_M);
        if (heightM < before[i] - 0.1) lower++;
      });
    });
    expect(lower).toBeGreaterThan(1000);
  });

  it('of replacement by the same, of a plant on its species’ curve, never makes it taller', () => {
    everySeed((random, pace, seed) => {
      const { heightM: _, measuredYear: __, ...plant } = drawnPlant(random);
      const planted = { ...plant, plantedYear: plant.plantedYear ?? 2022 };
      const before = heightsOf(planted, pace);
      const after = heightsOf({ ...planted, care: [drawnEvent(random, ['replace'])] }, pace);
      after.forEach((heightM, i) => {
        expect(heightM, `seed ${seed}, year ${FIRST + i}`).toBeLessThanOrEqual(before[i] + ROUNDING_M);
      });
    });
  });

  it('of a year changes nothing before it', () => {
    everySeed((random, pace, seed) => {
      const plant = drawnPlant(random);
      const care = drawnCare(random, CARE_KINDS);
      const event = drawnEvent(random, CARE_KINDS);
      // What was done before a height was measured says how the measured plant came about.
      const known = plant.measuredYear ?? BASE - 1;
      if (event.year <= known) return;
      const before = sizesOf({ ...plant, care }, pace).slice(0, event.year - FIRST);
      const after = sizesOf({ ...plant, care: [...care, event] }, pace).slice(0, event.year - FIRST);
      expect(after, `seed ${seed}`).toEqual(before);
    });
  });

  it('that does nothing changes nothing', () => {
    everySeed((random, pace, seed) => {
      const plant = drawnPlant(random);
      const care = drawnCare(random, CUTS);
      const nothing: CareEvent[] = [
        { what: 'pollard', year: 2035, heightM: 60 },
        { what: 'cutTo', year: 2035, heightM: 60, everyYears: 3 },
        { what: 'thin', year: 2036, share: 0 },
        { what: 'die', year: LAST + 1 },
        { what: 'coppice', year: FIRST - 1, lastYear: FIRST - 2 },
      ];
      expect(sizesOf({ ...plant, care: [...care, ...nothing] }, pace), `seed ${seed}`).toEqual(
        sizesOf({ ...plant, care }, pace),
      );
    });
  });

  it('gives a crown with room in it: a base below its top, a radius, foliage from none to all', () => {
    everySeed((random, pace, seed) => {
      const plant = { ...drawnPlant(random), care: drawnCare(random, CARE_KINDS) };
      for (const size of sizesOf(plant, pace)) {
        if (!size) continue;
        expect(size.heightM, `seed ${seed}`).toBeGreaterThan(0);
        expect(size.crownBaseM, `seed ${seed}`).toBeLessThan(size.heightM);
        expect(size.crownRadiusM, `seed ${seed}`).toBeGreaterThan(0);
        expect(size.foliageShare).toBeGreaterThanOrEqual(0);
        expect(size.foliageShare).toBeLessThanOrEqual(1);
      }
    });
  });

  it('keeps the order of the paces', () => {
    everySeed((random, _, seed) => {
      const plant = { ...drawnPlant(random), care: drawnCare(random, ['pollard', 'coppice', 'cutTo']) };
      if (plant.shootsAgain === false) return;
      const [slow, usual, fast] = PACES.map((pace) =>
        heightsOf(plant, pace).slice(plant.measuredYear ? 10 : 7),
      );
      usual.forEach((heightM, i) => {
        expect(slow[i], `seed ${seed}`).toBeLessThanOrEqual(heightM + ROUNDING_M);
        expect(fast[i], `seed ${seed}`).toBeGreaterThanOrEqual(heightM - ROUNDING_M);
      });
    });
  });
});
