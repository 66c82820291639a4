import { describe, expect, it } from 'vitest';
import { readWeatherFile } from '../../src/sun/weather/read-weather-file.ts';
import type { WeatherTable } from '../../src/sun/weather/weather-table.ts';
import { BadInputError } from '../../src/units/bad-input.ts';
import { climateFromHours, seasonMeanMps } from '../../src/wind/climate-from-hours.ts';
import { climateFromRecord } from '../../src/wind/climate-from-record.ts';
import { sectorsFromWords } from '../../src/wind/climate-from-words.ts';
import type { WindClimate } from '../../src/wind/shelter-types.ts';
import { siteClimate } from '../../src/wind/site-climate.ts';
import { bytesOf, epw, type HourOfYear, plainHour, tmy3 } from '../weather/weather-files.ts';
import { growingDay } from './shelter-scenes.ts';

const southernDay = growingDay.map((flag) => 1 - flag);
const table = (
  from: (hour: HourOfYear) => number | string,
  speed: (hour: HourOfYear) => number | string,
): WeatherTable =>
  readWeatherFile(
    bytesOf(tmy3((hour) => ({ ...plainHour(hour), from: from(hour), speed: speed(hour) }))),
    'hours.csv',
  );
const total = (season: WindClimate['growing']): number =>
  season.calmShare + season.sectors.reduce((sum, { frequency }) => sum + frequency, 0);

describe('a climate from hours', () => {
  it('keeps the seasons apart, in either hemisphere', () => {
    const isSummer = ({ month }: HourOfYear) => month >= 4 && month <= 9;
    const hours = table(
      (hour) => (isSummer(hour) ? 225 : 45),
      (hour) => (isSummer(hour) ? 3 : 6),
    );
    const north = climateFromHours(hours, growingDay);
    expect(north.growing.sectors[10]).toMatchObject({ fromDeg: 225, frequency: 1, meanSpeedMps: 3 });
    expect(north.rest.sectors[2]).toMatchObject({ fromDeg: 45, frequency: 1, meanSpeedMps: 6 });
    const south = climateFromHours(hours, southernDay);
    expect(south.growing).toEqual(north.rest);
    expect(south.rest).toEqual(north.growing);
  });
  it('counts calms without a direction and adds to 1', () => {
    const climate = climateFromHours(
      table(
        ({ index }) => (index % 4 === 0 ? 0 : 270),
        ({ index }) => (index % 4 === 0 ? 0 : 5),
      ),
      growingDay,
    );
    expect(climate.growing.calmShare).toBeCloseTo(0.25, 3);
    expect(climate.growing.sectors[0].frequency).toBe(0);
    expect(climate.growing.sectors[12].frequency).toBeCloseTo(0.75, 3);
    expect(total(climate.growing)).toBeCloseTo(1, 12);
    expect(seasonMeanMps(climate.growing)).toBeCloseTo(3.75, 3);
  });
  it('takes 0 and 360 degrees as north alike', () => {
    const climate = climateFromHours(
      table(
        ({ index }) => (index % 2 ? 360 : 0),
        () => 5,
      ),
      growingDay,
    );
    expect(climate.growing.sectors[0].frequency).toBeCloseTo(1, 12);
  });
  it('gives sixteen even sectors from directions in tens of degrees', () => {
    const climate = climateFromHours(
      table(
        ({ index }) => ((index % 36) + 1) * 10,
        () => 5,
      ),
      growingDay,
    );
    for (const { frequency } of climate.growing.sectors) expect(frequency).toBeCloseTo(1 / 16, 3);
  });
  it('shares out wind whose direction is not known', () => {
    const climate = climateFromHours(
      table(
        ({ index }) => (index % 2 ? '' : 90),
        () => 5,
      ),
      growingDay,
    );
    expect(climate.growing.sectors[4].frequency).toBeCloseTo(1, 12);
  });
  it('finds the Weibull shape of the speeds', () => {
    // Quantiles of k = 2 in an order that gives every season and sector all of them.
    const climate = climateFromHours(
      table(
        () => 222,
        ({ index }) => (6 * Math.sqrt(-Math.log(1 - ((index % 100) + 0.5) / 100))).toFixed(3),
      ),
      growingDay,
    );
    expect(climate.growing.sectors[10].weibullK).toBeCloseTo(2, 1);
    expect(climate.growing.sectors[10].meanSpeedMps).toBeCloseTo((6 * Math.sqrt(Math.PI)) / 2, 1);
  });
  it('keeps the measuring height, and reads an EPW file as well', () => {
    const climate = climateFromHours(readWeatherFile(bytesOf(epw()), 'x.epw'), southernDay);
    expect(climate.heightM).toBe(10);
    expect(climate.growing.sectors[10].frequency).toBeGreaterThan(0.9);
  });
  it('refuses a file without winds', () => {
    expect(() =>
      climateFromHours(
        table(
          () => '',
          () => '',
        ),
        growingDay,
      ),
    ).toThrow(BadInputError);
  });
});

describe('a climate from the site', () => {
  const sectors = [
    { fromDeg: 0, frequency: 1, meanSpeedMps: 4 },
    { fromDeg: 360, frequency: 1, meanSpeedMps: 6, weibullK: 2 },
    { fromDeg: 225, frequency: 2, meanSpeedMps: 5, weibullK: 1.8, season: 'growing' as const },
  ];
  it('joins equal directions, scales frequencies and says what it took for granted', () => {
    const { climate, assumed } = climateFromRecord({ calmShare: 0.1, sectors });
    expect(climate.growing.sectors).toEqual([
      { fromDeg: 0, frequency: 0.45, meanSpeedMps: 5, weibullK: 2 },
      { fromDeg: 225, frequency: 0.45, meanSpeedMps: 5, weibullK: 1.8 },
    ]);
    expect(climate.rest.sectors).toEqual([{ fromDeg: 0, frequency: 0.9, meanSpeedMps: 5, weibullK: 2 }]);
    expect(assumed.join()).toMatch(/10 m.*Weibull k = 2/);
  });
  it('wins over the weather file, which wins over an even rose', () => {
    const weather = table(
      () => 90,
      () => 5,
    );
    expect(siteClimate({ sectors }, weather, growingDay).climate.growing.sectors[1].fromDeg).toBe(225);
    expect(siteClimate(null, weather, growingDay).climate.growing.sectors[4].frequency).toBeCloseTo(1, 12);
    const { climate, assumed } = siteClimate(undefined, null, growingDay);
    expect(climate.growing.sectors).toHaveLength(16);
    expect(total(climate.growing)).toBeCloseTo(1, 12);
    expect(assumed).toHaveLength(1);
    expect(assumed[0]).toMatch(/evenly from all sides/);
  });
  it('gives a season without sectors those of the other, and says so', () => {
    const { climate, assumed } = climateFromRecord({ heightM: 10, sectors: [sectors[2]] });
    expect(climate.rest.sectors).toEqual(climate.growing.sectors);
    expect(assumed).toEqual([
      'wind: the frequencies of the growing season add up to 200 %, and are taken in proportion',
      'wind: the rest of the year has the sectors of the growing season',
    ]);
  });
  it('refuses sectors that do not blow', () => {
    expect(() => climateFromRecord({ sectors: [{ fromDeg: 0, frequency: 0, meanSpeedMps: 4 }] })).toThrow(
      BadInputError,
    );
  });
});

describe('a climate from words', () => {
  it('makes the named side the windiest and most frequent, and adds to 1', () => {
    const sectors = sectorsFromWords([{ from: 'south-west', season: 'year', force: 8, howOften: 'often' }]);
    expect(sectors).toHaveLength(16);
    expect(sectors.every(({ season }) => season === undefined)).toBe(true);
    const best = sectors.reduce((a, b) =>
      b.frequency * b.meanSpeedMps > a.frequency * a.meanSpeedMps ? b : a,
    );
    expect(best.fromDeg).toBe(225);
    expect(sectors.reduce((sum, { frequency }) => sum + frequency, 0)).toBeCloseTo(1, 2);
  });
  it('keeps bitter north-easterlies to their season', () => {
    const sectors = sectorsFromWords([
      { from: 'SW', season: 'year', force: 6, howOften: 'often' },
      { from: 45, season: 'rest', force: 5, howOften: 'sometimes' },
    ]);
    expect(sectors).toHaveLength(32);
    const northEast = (season: string) =>
      sectors.find((sector) => sector.fromDeg === 45 && sector.season === season);
    expect(northEast('rest')?.frequency).toBeGreaterThan(2 * (northEast('growing')?.frequency ?? 1));
    expect(northEast('rest')?.meanSpeedMps).toBeGreaterThan(northEast('growing')?.meanSpeedMps ?? 99);
  });
  it('often is more than sometimes is more than rarely, and a stronger force blows faster', () => {
    const west = (force: number, howOften: 'often' | 'sometimes' | 'rarely') =>
      sectorsFromWords([{ from: 'W', season: 'year', force, howOften }])[12];
    expect(west(5, 'often').frequency).toBeGreaterThan(west(5, 'sometimes').frequency);
    expect(west(5, 'sometimes').frequency).toBeGreaterThan(west(5, 'rarely').frequency);
    expect(west(7, 'often').meanSpeedMps).toBeGreaterThan(west(5, 'often').meanSpeedMps);
  });
  it('reads into a climate', () => {
    const sectors = sectorsFromWords([{ from: 'WNW', season: 'growing', force: 4, howOften: 'sometimes' }]);
    const { climate } = climateFromRecord({ heightM: 10, sectors });
    expect(total(climate.growing)).toBeCloseTo(1, 12);
    expect(climate.growing.sectors).toHaveLength(16);
  });
  it.each([
    [[], 'No wind'],
    [[{ from: 'W', season: 'year', force: 13, howOften: 'often' }], 'force from 1 to 12'],
    [[{ from: 400, season: 'year', force: 3, howOften: 'often' }], '0 to 360'],
  ] as const)('refuses what makes no sense (%#)', (entries, expected) => {
    expect(() => sectorsFromWords(entries)).toThrow(expected);
  });
});
