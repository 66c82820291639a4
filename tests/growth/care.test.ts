import { describe, expect, it } from 'vitest';
import { type CareEvent, careUpTo } from '../../src/growth/care.ts';
import { ageAtHeight, heightAtAge } from '../../src/growth/height-curve.ts';
import { woodySizeAt } from '../../src/growth/size-at-year.ts';
import { TEMPERATE_BROADLEAVES } from '../../src/growth/stem-allometry.ts';
import type { WoodyPlant } from '../../src/growth/woody-plant.ts';

const BASE = 2027;
const curve = { maxHeightM: 20, ratePerYear: 0.06, shape: 1.6 };
const spread = { matureHeightM: 20, matureSpreadM: 12, group: TEMPERATE_BROADLEAVES };
const standing: WoodyPlant = { curve, spread, clearStemShare: 0.1, heightM: 10 };
const sizeOf = (plant: WoodyPlant, year: number) => woodySizeAt(plant, year, BASE, 'usual');
const withCare =
  (care: readonly CareEvent[], plant = standing) =>
  (year: number) =>
    sizeOf({ ...plant, care }, year);
const uncut = (year: number) => sizeOf(standing, year)!;
/**
 * Regrowth by the slow way: a thousand small steps a season, each as steep as the curve is at that height, or as it is
 * where it is steepest.
 */
function regrown(fromM: number, seasons: number): number {
  const steepness = (heightM: number) => 0.06 * 1.6 * heightM * ((20 / heightM) ** (1 / 1.6) - 1);
  const steepestM = 20 * (1 - 1 / 1.6) ** 1.6;
  let heightM = fromM;
  for (let step = 0; step < 1000 * seasons; step++) heightM += steepness(Math.max(heightM, steepestM)) / 1000;
  return heightM;
}

describe('times of care', () => {
  it('repeat up to the last year, and not past the year that is asked for', () => {
    const years = (event: CareEvent, upTo: number) => careUpTo([event], upTo).map(({ year }) => year);
    const every7: CareEvent = { what: 'coppice', year: 2030, everyYears: 7 };
    expect(years(every7, 2029)).toEqual([]);
    expect(years(every7, 2051)).toEqual([2030, 2037, 2044, 2051]);
    expect(years({ ...every7, lastYear: 2044 }, 2100)).toEqual([2030, 2037, 2044]);
    expect(years({ ...every7, lastYear: 2043 }, 2100)).toEqual([2030, 2037]);
    expect(years({ ...every7, lastYear: 2029 }, 2100)).toEqual([]);
    expect(years({ what: 'coppice', year: 2030 }, 2100)).toEqual([2030]);
  });

  it('of one winter go by what they take, whatever their order in the file', () => {
    const care: CareEvent[] = [
      { what: 'thin', year: 2030, share: 0.2 },
      { what: 'cutTo', year: 2030, heightM: 6 },
      { what: 'pollard', year: 2030, heightM: 3 },
      { what: 'raiseCrown', year: 2030, heightM: 2 },
    ];
    expect(careUpTo(care, 2030).map(({ what }) => what)).toEqual(['pollard', 'cutTo', 'raiseCrown', 'thin']);
    expect(withCare(care)(2033)).toEqual(withCare(care.toReversed())(2033));
  });
});

describe('shoots of an old root', () => {
  it('grow a metre or two in their first year where the species grows fast, and never slower than a seedling', () => {
    const fast: WoodyPlant = {
      curve: { maxHeightM: 25, ratePerYear: 0.12, shape: 1.6 },
      spread,
      heightM: 20,
      care: [{ what: 'coppice', year: 2030 }],
    };
    const firstM = sizeOf(fast, 2030)!.heightM - 0.1;
    expect(firstM).toBeGreaterThan(1);
    expect(firstM).toBeLessThan(2);
    for (let seasons = 1; seasons < 40; seasons++) {
      const seedlingM = heightAtAge(fast.curve!, ageAtHeight(fast.curve!, 0.1) + seasons);
      expect(sizeOf(fast, 2029 + seasons)!.heightM).toBeGreaterThan(seedlingM);
    }
  });
});

describe('coppicing', () => {
  const at = withCare([{ what: 'coppice', year: 2030, everyYears: 7 }]);

  it('leaves a stump that grows again from the season after the cut', () => {
    expect(at(2029)).toEqual(uncut(2029));
    expect(at(2030)!.heightM).toBeCloseTo(regrown(0.1, 1), 3);
    expect(at(2036)!.heightM).toBeCloseTo(regrown(0.1, 7), 3);
    expect(at(2037)!.heightM).toBeCloseTo(regrown(0.1, 1), 3);
  });

  it('gives a crown as wide as one of the length that has grown, down to the ground', () => {
    const length = at(2036)!.heightM - 0.1;
    expect(at(2036)!.crownRadiusM).toBeCloseTo(
      sizeOf({ ...standing, heightM: length }, BASE)!.crownRadiusM,
      9,
    );
    expect(at(2036)!.crownBaseM).toBeCloseTo(0.1 * at(2036)!.heightM, 9);
    const raised = withCare([{ what: 'coppice', year: 2030 }], { ...standing, crownBaseM: 4 });
    expect(raised(2029)!.crownBaseM).toBe(4);
    expect(raised(2040)!.crownBaseM).toBeLessThan(1);
  });
});

describe('pollarding', () => {
  const at = withCare([{ what: 'pollard', year: 2030, heightM: 2.5, everyYears: 5, lastYear: 2040 }]);

  it('lets the crown grow again from its head', () => {
    expect(at(2030)!.heightM).toBeCloseTo(regrown(2.5, 1), 3);
    expect(at(2034)!.heightM).toBeCloseTo(regrown(2.5, 5), 3);
    expect(at(2035)!.heightM).toBeCloseTo(regrown(2.5, 1), 3);
    expect(at(2034)!.crownBaseM).toBe(2.5);
    expect(at(2034)!.clearedToM).toBe(2.5);
  });

  it('ends with its last year: it grows on', () => {
    expect(at(2044)!.heightM).toBeCloseTo(regrown(2.5, 5), 3);
    expect(at(2050)!.heightM).toBeCloseTo(regrown(2.5, 11), 3);
  });

  it('leaves alone what is lower than its head', () => {
    const whip: WoodyPlant = { ...standing, heightM: undefined, status: 'planned', plantedYear: 2028 };
    const cut = withCare([{ what: 'pollard', year: 2029, heightM: 2.5 }], whip)(2040);
    expect(cut).toEqual(sizeOf(whip, 2040));
  });

  it('takes away what was raised and thinned before', () => {
    const before: CareEvent[] = [
      { what: 'raiseCrown', year: 2028, heightM: 4 },
      { what: 'thin', year: 2029, share: 0.5 },
    ];
    const pollard: CareEvent = { what: 'pollard', year: 2030, heightM: 2.5 };
    expect(withCare([...before, pollard])(2032)).toEqual(withCare([pollard])(2032));
  });
});

describe('cutting to a height', () => {
  it('keeps the crown in proportion and grows again', () => {
    const at = withCare([{ what: 'cutTo', year: 2030, heightM: 6 }]);
    expect(at(2030)!.heightM).toBeCloseTo(regrown(6, 1), 3);
    expect(at(2030)!.crownRadiusM).toBeCloseTo(
      sizeOf({ ...standing, heightM: at(2030)!.heightM }, BASE)!.crownRadiusM,
      9,
    );
  });

  it('below a pollard’s head makes a new head', () => {
    const at = withCare([
      { what: 'pollard', year: 2028, heightM: 3 },
      { what: 'cutTo', year: 2030, heightM: 2 },
    ]);
    expect(at(2030)!.crownBaseM).toBe(2);
    expect(at(2030)!.crownRadiusM).toBeGreaterThan(0);
  });

  it('never makes it outgrow what was not cut', () => {
    const at = withCare([{ what: 'cutTo', year: 2030, heightM: 10 }]);
    for (let year = 2030; year < 2080; year++)
      expect(at(year)!.heightM).toBeLessThanOrEqual(uncut(year).heightM);
  });
});

describe('raising the crown', () => {
  it('clears the stem for good, and nothing else', () => {
    const at = withCare([{ what: 'raiseCrown', year: 2030, heightM: 3 }]);
    expect(at(2030)).toEqual({ ...uncut(2030), crownBaseM: 3, clearedToM: 3 });
    expect(at(2050)!.crownBaseM).toBe(3);
  });

  it('of a tree that is lower leaves it its top, and counts for no more later', () => {
    const low: WoodyPlant = { ...standing, heightM: 2 };
    const before = sizeOf(low, 2029)!.heightM;
    const at = withCare([{ what: 'raiseCrown', year: 2030, heightM: 4 }], low);
    expect(at(2031)!.crownBaseM).toBeCloseTo(0.8 * before, 9);
    expect(at(2060)!.clearedToM).toBeCloseTo(0.8 * before, 9);
  });
});

describe('thinning', () => {
  it('takes a share of the foliage, which is back after five seasons', () => {
    const at = withCare([{ what: 'thin', year: 2030, share: 0.3 }]);
    const shares = [2029, 2030, 2031, 2034, 2035].map((year) => at(year)!.foliageShare);
    [1, 0.7, 0.76, 0.94, 1].forEach((share, i) => {
      expect(shares[i]).toBeCloseTo(share, 12);
    });
    expect(at(2030)!.heightM).toBe(uncut(2030).heightM);
  });

  it('done again takes its share of what is left', () => {
    const at = withCare([{ what: 'thin', year: 2030, share: 0.5, everyYears: 1, lastYear: 2031 }]);
    expect(at(2031)!.foliageShare).toBeCloseTo(0.5 * (1 - 0.5 * 0.8), 12);
  });
});

describe('dying and being replaced', () => {
  it('ends it in the year after the winter', () => {
    const at = withCare([{ what: 'die', year: 2031 }]);
    expect(at(2030)).toEqual(uncut(2030));
    expect(at(2031)).toBeNull();
    expect(at(2090)).toBeNull();
  });

  it('puts a young plant in its place, as one planted in that year', () => {
    const at = withCare([{ what: 'replace', year: 2031 }]);
    const young: WoodyPlant = { curve, spread, clearStemShare: 0.1, plantedYear: 2031 };
    expect(at(2030)).toEqual(uncut(2030));
    for (const year of [2031, 2040, 2060]) expect(at(year)).toEqual(sizeOf(young, year));
    expect(at(2031)!.heightM).toBeCloseTo(heightAtAge(curve, ageAtHeight(curve, 0.6) + 1), 9);
  });

  it('leaves the place empty between its death and its replacement', () => {
    const at = withCare([
      { what: 'replace', year: 2035 },
      { what: 'die', year: 2031 },
    ]);
    expect(at(2034)).toBeNull();
    expect(at(2035)!.heightM).toBeLessThan(1.5);
    const sameWinter = withCare([
      { what: 'replace', year: 2031 },
      { what: 'die', year: 2031 },
    ]);
    expect(sameWinter(2031)).not.toBeNull();
  });

  it('forgets what was done to the first and was measured of it', () => {
    const at = withCare(
      [
        { what: 'pollard', year: 2029, heightM: 2 },
        { what: 'replace', year: 2031 },
      ],
      { ...standing, crownRadiusM: 6, crownBaseM: 4 },
    );
    expect(at(2060)).toEqual(sizeOf({ curve, spread, clearStemShare: 0.1, plantedYear: 2031 }, 2060));
  });

  it('keeps a height that was measured after it was replaced', () => {
    const care: CareEvent[] = [
      { what: 'pollard', year: 2005, heightM: 2 },
      { what: 'replace', year: 2015 },
    ];
    const undated = withCare(care, { ...standing, plantedYear: undefined });
    expect(undated(2027)).toEqual(uncut(2027));
    const dated = { ...standing, plantedYear: 1990, measuredYear: 2025 };
    expect(withCare(care, dated)(2030)).toEqual(sizeOf(dated, 2030));
  });
});

describe('care before it is planted', () => {
  it('is nothing, even a replacement', () => {
    const plant: WoodyPlant = { ...standing, heightM: undefined, plantedYear: 2030 };
    for (const what of ['die', 'replace', 'coppice'] as const)
      for (const year of [2025, 2030])
        expect(withCare([{ what, year }], plant)(2045)).toEqual(sizeOf(plant, 2045));
    const undated: WoodyPlant = { ...standing, heightM: undefined, status: 'planned' };
    expect(withCare([{ what: 'coppice', year: BASE }], undated)(2040)).toEqual(sizeOf(undated, 2040));
  });
});

describe('a height that was measured', () => {
  const pollarded: CareEvent = { what: 'pollard', year: 2020, heightM: 2, everyYears: 5 };

  it('after a cut has the cut in it', () => {
    const measured = { ...standing, heightM: 5, measuredYear: 2026 };
    const at = withCare([{ ...pollarded, lastYear: 2025 }], measured);
    expect(at(2026)!.heightM).toBe(5);
    expect(at(2026)!.crownBaseM).toBe(2);
    expect(at(2030)!.heightM).toBe(sizeOf(measured, 2030)!.heightM);
  });

  it('before a cut is the height that is cut', () => {
    const at = withCare([pollarded], { ...standing, measuredYear: 2024 });
    expect(at(2024)!.heightM).toBe(10);
    expect(at(2025)!.heightM).toBeCloseTo(regrown(2, 1), 3);
  });

  it('without a year is that of the base year’s end if nothing is done in its winter', () => {
    expect(withCare([{ what: 'cutTo', year: 2026, heightM: 4 }])(2027)!.heightM).toBe(10);
    expect(withCare([{ what: 'cutTo', year: 2027, heightM: 4 }])(2027)!.heightM).toBeCloseTo(
      regrown(4, 1),
      3,
    );
  });

  it('with a radius pins the crown above the head it had then', () => {
    const measured = { ...standing, heightM: 5, measuredYear: 2026, crownRadiusM: 2 };
    const at = withCare([pollarded], measured);
    expect(at(2026)!.crownRadiusM).toBeCloseTo(2, 9);
    // Cut again at the same head: the same length above it is as wide.
    const year = 2034;
    const own = (lengthM: number) => sizeOf({ ...standing, heightM: lengthM }, BASE)!.crownRadiusM;
    expect(at(year)!.crownRadiusM).toBeCloseTo((2 * own(at(year)!.heightM - 2)) / own(3), 9);
  });
});

describe('a plant that does not shoot again', () => {
  const conifer = { ...standing, shootsAgain: false };

  it('dies of losing its whole crown', () => {
    for (const event of [
      { what: 'coppice', year: 2030 },
      { what: 'pollard', year: 2030, heightM: 3 },
    ] as const) {
      expect(withCare([event], conifer)(2029)).toEqual(uncut(2029));
      expect(withCare([event], conifer)(2030)).toBeNull();
    }
  });

  it('lives where nothing of it is cut, where it is trimmed, and where it was measured since', () => {
    expect(withCare([{ what: 'pollard', year: 2030, heightM: 15 }], conifer)(2030)).toEqual(uncut(2030));
    expect(withCare([{ what: 'cutTo', year: 2030, heightM: 5 }], conifer)(2030)).not.toBeNull();
    expect(withCare([{ what: 'pollard', year: 2020, heightM: 5 }], conifer)(2030)).not.toBeNull();
  });

  it('makes room for what is planted after it', () => {
    const at = withCare(
      [
        { what: 'coppice', year: 2030 },
        { what: 'replace', year: 2032 },
      ],
      conifer,
    );
    expect(at(2031)).toBeNull();
    expect(at(2032)).not.toBeNull();
  });
});

describe('a plant whose species is not known', () => {
  it('keeps what a cut leaves', () => {
    const at = withCare([{ what: 'cutTo', year: 2030, heightM: 4 }], { heightM: 7 });
    expect(at(2060)!.heightM).toBe(4);
  });
});
