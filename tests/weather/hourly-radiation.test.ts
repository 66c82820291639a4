import { describe, expect, it } from 'vitest';
import { hourlyRadiation } from '../../src/sun/weather/hourly-radiation.ts';
import { readWeatherFile } from '../../src/sun/weather/read-weather-file.ts';
import { BadInputError } from '../../src/units/bad-input.ts';
import { bytesOf, epw, plainHour, tmy3 } from './weather-files.ts';

const table = (text: string) => readWeatherFile(bytesOf(text), 'hours.dat');
const sum = (values: Float32Array): number => values.reduce((total, value) => total + value, 0);

describe('hourly radiation in a calendar year', () => {
  it('puts each hour at its middle in UTC', () => {
    const { midHourMs, globalWm2 } = hourlyRadiation(table(tmy3()), 2027);
    // The first hour ends at 01:00 four hours behind UTC: its middle is 04:30 UTC.
    expect(new Date(midHourMs[0]).toISOString()).toBe('2027-01-01T04:30:00.000Z');
    expect(new Date(midHourMs[8759]).toISOString()).toBe('2028-01-01T03:30:00.000Z');
    // 06:00 to 07:00 is the first lit hour.
    expect([globalWm2[5], globalWm2[6]]).toEqual([0, 400]);
    expect(midHourMs.every((ms, i) => i === 0 || ms - midHourMs[i - 1] === 3_600_000)).toBe(true);
  });
  it('east of Greenwich the year begins in the UTC year before', () => {
    const { midHourMs } = hourlyRadiation(table(epw()), 2027);
    expect(new Date(midHourMs[0]).toISOString()).toBe('2026-12-31T12:30:00.000Z');
  });
  it('repeats 28 February in a leap year', () => {
    const { midHourMs, globalWm2 } = hourlyRadiation(table(tmy3()), 2028);
    expect(midHourMs).toHaveLength(8784);
    expect(sum(globalWm2)).toBe(366 * 12 * 400);
    expect(midHourMs.every((ms, i) => i === 0 || ms - midHourMs[i - 1] === 3_600_000)).toBe(true);
  });
  it('fills a missing hour from the day before and never has more diffuse than global light', () => {
    const holes = tmy3((hour) =>
      hour.index === 24 * 100 + 11
        ? { ...plainHour(hour), global: '', diffuse: '' }
        : { ...plainHour(hour), diffuse: hour.hourEnd === 9 ? 500 : plainHour(hour).diffuse },
    );
    const { globalWm2, diffuseWm2 } = hourlyRadiation(table(holes), 2027);
    expect(globalWm2[24 * 100 + 11]).toBe(400);
    // Erbs splits the borrowed 400 W m-2 with the sun high in April: some of it is beam, some is not.
    expect(diffuseWm2[24 * 100 + 11]).toBeGreaterThan(100);
    expect(diffuseWm2[24 * 100 + 11]).toBeLessThan(400);
    expect(diffuseWm2.every((value, i) => value <= globalWm2[i])).toBe(true);
  });
  it('takes the mean of several years, hour by hour', () => {
    const brighter = (year = 0) => 100 * (year - 2020);
    const several = epw(
      (hour) => ({
        ...plainHour(hour),
        global: hour.hourEnd === 12 ? 300 + brighter(hour.year) : 0,
        diffuse: hour.hourEnd === 12 ? brighter(hour.year) : 0,
      }),
      [2021, 2022, 2024],
    );
    const { midHourMs, globalWm2, diffuseWm2 } = hourlyRadiation(table(several), 2027);
    expect(midHourMs).toHaveLength(8760);
    expect(midHourMs.every((ms, i) => i === 0 || ms - midHourMs[i - 1] === 3_600_000)).toBe(true);
    expect(globalWm2[11]).toBeCloseTo(300 + 700 / 3, 3);
    expect(diffuseWm2[11]).toBeCloseTo(700 / 3, 3);
    expect(sum(globalWm2)).toBeCloseTo(365 * (300 + 700 / 3), 0);
  });
  it('refuses a file without radiation', () => {
    const dark = tmy3((hour) => ({ ...plainHour(hour), global: '', diffuse: '' }));
    expect(() => hourlyRadiation(table(dark), 2027)).toThrow(BadInputError);
  });
});
