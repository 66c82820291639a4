import { describe, expect, it } from 'vitest';
import { readWeatherFile } from '../../src/sun/weather/read-weather-file.ts';
import { BadInputError } from '../../src/units/bad-input.ts';
import { bytesOf, epw, plainHour, tmy3 } from './weather-files.ts';

const read = (text: string, name = 'hours.dat') => readWeatherFile(bytesOf(text), name);
const complaint = (text: string): string => {
  try {
    read(text);
  } catch (error) {
    expect(error).toBeInstanceOf(BadInputError);
    return (error as Error).message;
  }
  return '';
};

describe('formats are told apart by what is in them', () => {
  it('a TMY3 table', () => {
    const table = read(tmy3());
    expect(table).toMatchObject({
      format: 'TMY3',
      place: 'INVENTED FIELD',
      latDeg: 45.1,
      lonDeg: -64.5,
      utcOffsetHours: -4,
      hourCount: 8760,
    });
    expect([table.month[8759], table.day[8759], table.hourEnd[8759]]).toEqual([12, 31, 24]);
    expect([table.globalWm2[12], table.diffuseWm2[12], table.windFromDeg[12]]).toEqual([400, 150, 220]);
    expect([table.windSpeedMps[12], table.temperatureC[12]]).toEqual([4, 11.5]);
  });
  it('an EPW file, south of the equator', () => {
    const table = read(epw());
    expect(table).toMatchObject({
      format: 'EPW',
      place: 'Invented Plain',
      latDeg: -43.6,
      utcOffsetHours: 12,
    });
    expect(table.hourCount).toBe(8760);
    expect([table.globalWm2[7], table.windFromDeg[7], table.windSpeedMps[7]]).toEqual([400, 220, 4]);
  });
  it('an EPW file of several real years', () => {
    const table = read(epw(plainHour, [2021, 2022, 2023]));
    expect([table.hourCount, table.typical]).toEqual([3 * 8760, null]);
    expect([table.year[0], table.year[8760], table.year[3 * 8760 - 1]]).toEqual([2021, 2022, 2023]);
  });
  it('refuses an EPW file that breaks off in its second year, and a typical year of two', () => {
    const lines = epw(plainHour, [2021, 2022]).split('\r\n');
    expect(complaint(lines.slice(0, 8 + 9000).join('\r\n'))).toBe(
      'hours.dat ends at line 9008 with 9000 hours of weather; the 8760 hours of a year, or of several whole years, are expected.',
    );
    const [head, names, ...hours] = tmy3().trim().split('\n');
    expect(complaint([head, names, ...hours, ...hours].join('\n'))).toBe(
      'hours.dat ends at line 17522 with 17520 hours of weather; the 8760 hours of a year are expected.',
    );
  });
  it('a plain table with its own units, separators and byte order mark', () => {
    const table = read(
      '\uFEFFTime;Wind speed (km/h);Direction (deg)\n2024-03-01T14:00+02:00;36;270\n2024-03-02 00:00;18;90\n',
    );
    expect(table.format).toBe('CSV');
    expect(table.windSpeedMps[0]).toBeCloseTo(10, 5);
    expect([table.month[0], table.day[0], table.hourEnd[0]]).toEqual([3, 1, 14]);
    expect([table.month[1], table.day[1], table.hourEnd[1]]).toEqual([3, 1, 24]);
    expect([table.latDeg, table.windFromDeg[1]]).toEqual([null, 90]);
    expect(Number.isNaN(table.globalWm2[0])).toBe(true);
  });
  it.each([
    ['speed_kn', 10, 5.144],
    ['speed mph', 10, 4.4704],
    ['speed', 10, 10],
  ])('heading "%s"', (heading, given, mps) => {
    expect(read(`time,${heading},from\n2024-01-01 01:00,${given},10\n`).windSpeedMps[0]).toBeCloseTo(mps, 3);
  });
});

describe('what is missing becomes NaN', () => {
  it('EPW: 9999 W/m2, 999 degrees, 999 m/s, 99.9 degrees', () => {
    const table = read(
      epw(() => ({ global: 9999, diffuse: 9999, from: 999, speed: 999, temperature: 99.9 })),
    );
    for (const values of [
      table.globalWm2,
      table.diffuseWm2,
      table.windFromDeg,
      table.windSpeedMps,
      table.temperatureC,
    ]) {
      expect(Number.isNaN(values[100])).toBe(true);
    }
  });
  it('TMY3: blanks and -9900', () => {
    const table = read(
      tmy3(({ index }) => ({
        ...plainHour({ index, month: 1, day: 1, hourEnd: 1 }),
        from: '',
        speed: -9900,
      })),
    );
    expect(Number.isNaN(table.windFromDeg[5]) && Number.isNaN(table.windSpeedMps[5])).toBe(true);
  });
});

describe('a file that cannot be read gives one sentence with its place', () => {
  it.each([
    ['', 'hours.dat is empty'],
    ['{"type": "FeatureCollection"}', 'hours.dat is no weather file'],
    [String.fromCharCode(0, 1, 2, 3).repeat(50), 'hours.dat is no weather file'],
    [tmy3().slice(0, 60_000), 'line'],
    [tmy3().split('\n').slice(0, 5000).join('\n'), 'ends at line 5000 with 4998 hours'],
    [epw().split('\r\n').slice(0, 100).join('\r\n'), 'ends at line 100 with 92 hours'],
    [epw().split('\r\n').slice(0, 4).join('\r\n'), 'no DATA PERIODS line'],
    [epw().replace('DATA PERIODS,1,1,', 'DATA PERIODS,1,4,'), 'line 8, column 3 gives 4 records an hour'],
    [epw().replace('-43.600', '-95'), 'line 1, column 7 (latitude) holds -95'],
    [
      tmy3().replace('01/02/1981,05:00,0', '01/02/1981,05:00,abc'),
      'line 31, column 3 (global radiation) holds "abc"',
    ],
    [tmy3().replace('01/02/1981,05:00', '13/02/1981,05:00'), 'line 31 is stamped 13/02/1981'],
    [tmy3().replace('Wspd (m/s)', 'Wind'), 'line 2 has no column "Wspd (m/s)"'],
    ['time,speed,direction\n', 'no winds below it'],
    ['time,speed,direction\nnoon,3,4\n', 'line 2, column 1 (time) holds "noon"'],
    ['time,speed,direction\n2024-01-01 01:00,3\n', 'line 2 breaks off after 2 columns'],
  ])('case %#', (text, expected) => {
    const message = complaint(text);
    expect(message).toContain(expected);
    expect(message.startsWith('hours.dat')).toBe(true);
    expect(message.endsWith('.')).toBe(true);
    expect(message).not.toContain('\n');
  });
});
