import { describe, expect, test } from 'vitest';
import { siteFrosts } from '../../src/scene/site-frosts.ts';
import { frostYears } from '../../src/sun/weather/frost-years.ts';
import { readWeatherFile } from '../../src/sun/weather/read-weather-file.ts';
import type { WeatherTable } from '../../src/sun/weather/weather-table.ts';
import { northWind } from '../years/years-site.ts';
import { bytesOf, epw, plainHour, tmy3 } from './weather-files.ts';

const read = (text: string): WeatherTable => readWeatherFile(bytesOf(text), 'hours.dat');

/** A plain table of whole years. @param temperature of a UTC day and hour. */
function csv(fromYear: number, toYear: number, temperature: (date: Date) => number | string): string {
  const lines = ['time,speed m/s,direction,Temp (°C)'];
  for (let ms = Date.UTC(fromYear, 0, 1); ms < Date.UTC(toYear + 1, 0, 1); ms += 3_600_000) {
    const stamp = new Date(ms + 3_600_000).toISOString().slice(0, 16).replace('T', ' ');
    lines.push(`${stamp},3,220,${temperature(new Date(ms))}`);
  }
  return lines.join('\n');
}
const monthDay = (date: Date) => (date.getUTCMonth() + 1) * 100 + date.getUTCDate();
const summer = (month: number) => month >= 4 && month <= 9;

describe('real years', () => {
  // 12 degrees by night and 20 by day, but for single cold nights.
  const cold: Record<number, Record<number, number>> = {
    2020: { 312: -6, 511: -1.5, 1004: -0.2, 1101: -3 },
    2021: { 420: 0, 1120: -2, 520: 0.1 },
  };
  const table = read(
    csv(2020, 2021, (date) => {
      const night = date.getUTCHours() < 6;
      return night ? (cold[date.getUTCFullYear()][monthDay(date)] ?? 12) : 20;
    }),
  );

  test('give the last frost before midsummer and the first after it, year by year', () => {
    expect(table.typical).toBeNull();
    const found = frostYears(table, false, summer)!;
    expect(found.springs).toEqual([
      { year: 2020, frost: expect.objectContaining({ month: 5, day: 11, leastC: -1.5 }) },
      { year: 2021, frost: expect.objectContaining({ month: 4, day: 20, leastC: 0 }) },
    ]);
    expect(found.autumns.map(({ frost }) => [frost?.month, frost?.day])).toEqual([
      [10, 4],
      [11, 20],
    ]);
  });

  test('sum the heat above 5 and 10 degrees: (least + greatest) / 2 less the base, day by day', () => {
    const { heat } = frostYears(table, false, summer)!;
    // 183 days of (12 + 20) / 2 = 16; of one day in 2020 (-1.5 + 20) / 2 = 9.25, of two in 2021 10 and 10.05.
    expect(heat[0].above5).toBeCloseTo(182 * 11 + 4.25, 3);
    expect(heat[0].above10).toBeCloseTo(182 * 6, 3);
    expect(heat[1].above10).toBeCloseTo(181 * 6 + 0 + 0.05, 3);
  });

  test('are said in sentences', () => {
    const { sentences } = siteFrosts(northWind([], { weatherFile: 'hours.csv' }), table);
    expect(sentences[0]).toBe(
      'Last spring frost, latest of 2 years: 11 May 2020 (−1.5 °C); 11 May 2020 (−1.5 °C), 20 April 2021 (0.0 °C).',
    );
    expect(sentences[1]).toContain('First autumn frost, earliest of 2 years: 4 October 2020');
    expect(sentences[2]).toMatch(/^Heat over the growing season, 2 years: \d+ to \d+ degree-days above 5 °C/);
  });

  test('are those of an EPW file of several years too', () => {
    const several = read(
      epw(
        (hour) => ({
          ...plainHour(hour),
          temperature: hour.year === 2022 && hour.month === 10 && hour.day === 20 ? -2 : 14,
        }),
        [2021, 2022],
      ),
    );
    const found = frostYears(several, true, (month) => month >= 10 || month <= 3)!;
    expect(found.springs.map(({ year, frost }) => [year, frost])).toEqual([[2021, null]]);
    expect(found.heat.map(({ year }) => year)).toEqual([2021, 2022]);
    expect(frostYears(several, false, summer)!.autumns[1].frost).toMatchObject({
      year: 2022,
      month: 10,
      day: 20,
    });
  });

  test('half a year that is not whole enough is left out', () => {
    const holes = read(csv(2020, 2020, (date) => (date.getUTCMonth() < 2 ? 'NA' : 15)));
    const found = frostYears(holes, false, summer)!;
    expect(found.springs).toEqual([]);
    expect(found.autumns).toEqual([{ year: 2020, frost: null }]);
    expect(found.heat).toHaveLength(1);
  });

  test('south of the equator spring runs over the turn of the year', () => {
    const south = read(
      csv(2020, 2021, (date) => {
        const frosty = date.getUTCFullYear() === 2020 ? [1105, 423] : [104, 510];
        return frosty.includes(monthDay(date)) ? -1 : 14;
      }),
    );
    const found = frostYears(south, true, (month) => month >= 10 || month <= 3)!;
    expect(found.springs).toEqual([
      { year: 2020, frost: expect.objectContaining({ year: 2021, month: 1, day: 4 }) },
    ]);
    expect(found.autumns.map(({ year, frost }) => [year, frost?.month, frost?.day])).toEqual([
      [2020, 4, 23],
      [2021, 5, 10],
    ]);
  });

  test('degrees Fahrenheit are turned, dew points are not taken for the air', () => {
    const text = 'time,speed,direction,dew point temp (F),air temp (F)\n2020-01-01 01:00,3,200,14,50\n';
    expect(read(text).temperatureC[0]).toBeCloseTo(10, 5);
    expect(read('time,speed,direction\n2020-01-01 01:00,3,200\n').temperatureC[0]).toBeNaN();
  });
});

describe('a typical year', () => {
  test('is told by months of different years, by the format, or by its header', () => {
    expect(read(tmy3()).typical).toBe('its months are of different years, 1981 to 1992');
    expect(read(epw()).typical).toBeNull();
    const said = epw().replace('made by a test', 'TMYx of many years');
    expect(read(said).typical).toBe('its header says "TMYx"');
    const source = epw().replace('made here', 'IWEC Data');
    expect(read(source).typical).toBe('its header says "IWEC"');
    // The line that every file has.
    expect(epw()).toContain('TYPICAL/EXTREME PERIODS');
    const mixed = epw().replace(/^1999,7,/gm, '2003,7,');
    expect(read(mixed).typical).toBe('its months are of different years, 1999 to 2003');
  });

  test('tells no frosts, and says why', () => {
    const table = read(tmy3());
    expect(frostYears(table, false, summer)).toBeNull();
    const { found, sentences } = siteFrosts(northWind([], { weatherFile: 'hours.csv' }), table);
    expect(found).toBeNull();
    expect(sentences).toEqual([
      expect.stringMatching(
        /^hours\.csv is a typical year \(its months are of different years, 1981 to 1992\)/,
      ),
    ]);
  });

  test('a real year over the turn of the year is real', () => {
    const lines = epw().split('\r\n');
    const data = lines.slice(8);
    const turned = [...data.slice(4344), ...data.slice(0, 4344).map((line) => line.replace(/^1999/, '2000'))];
    expect(read([...lines.slice(0, 8), ...turned].join('\r\n')).typical).toBeNull();
  });
});

test('without a file, or without temperatures, it says what is needed', () => {
  const site = northWind([], { weatherFile: 'hours.csv' });
  expect(siteFrosts(site, null).sentences[0]).toContain('need an hourly weather file of real years');
  const none = read(epw((hour) => ({ ...plainHour(hour), temperature: 99.9 })));
  expect(siteFrosts(site, none).sentences[0]).toBe(
    'hours.csv has no temperatures, so it tells neither frosts nor heat sums.',
  );
});
