import { describe, expect, it } from 'vitest';
import { readWeatherFile } from '../../src/sun/weather/read-weather-file.ts';
import { BadInputError } from '../../src/units/bad-input.ts';
import { bytesOf } from './weather-files.ts';

const read = (text: string) => readWeatherFile(bytesOf(text), 'gauge.csv');
const stamps = (text: string) => {
  const { month, day, hourEnd } = read(text);
  return [...month].map((each, i) => [each, day[i], hourEnd[i]]);
};

describe('headings as strangers write them', () => {
  it.each([
    ['time,speed,direction', 10],
    ['Timestamp,WindSpeed_ms,WindDir', 10],
    ['DateTime;Wind_Speed (m/s);Wind_Direction (deg)', 10],
    ['valid,sknt,drct', 10 * (1852 / 3600)],
    ['Date/Time,Wind Spd (km/h),Wind Dir (10s deg)', 10 / 3.6],
    ['date_time\twind speed [mph]\twind from', 10 * 0.44704],
    ['time,ws_kts,wd', 10 * (1852 / 3600)],
    ['Local time;FF;DD', 10],
    ['obs time,avg wind speed ft/s,bearing', 3.048],
    ['time,wind_speed_10m (km/h),wind_direction_10m (°),wind_gusts_10m (km/h)', 10 / 3.6],
  ])('"%s"', (heading, mps) => {
    const [separator] = /[\t;]/.exec(heading) ?? [','];
    const line = ['2024-07-01 12:00', '10', '225', '17'].slice(0, heading.split(separator).length);
    const table = read(`${heading}\n${line.join(separator)}\n`);
    expect(table.windSpeedMps[0]).toBeCloseTo(mps, 4);
    expect(table.windFromDeg[0]).toBe(225);
  });
  it('passes over gusts, deviations and flags that stand first', () => {
    const table = read(
      'time,wind gust,wind speed max,wind speed,wind dir std,wind dir\n2024-07-01 12:00,20,21,8,14,90\n',
    );
    expect([table.windSpeedMps[0], table.windFromDeg[0]]).toEqual([8, 90]);
  });
  it('finds the measuring height in a heading, and does not take m/s for one', () => {
    const heightOf = (heading: string) => read(`time,${heading},dir\n2024-07-01 12:00,3,90\n`).windHeightM;
    expect(heightOf('wind speed 2m (m/s)')).toBe(2);
    expect(heightOf('windspeed_80m')).toBe(80);
    expect(heightOf('speed at 6.5 m')).toBe(6.5);
    expect(heightOf('speed m/s')).toBe(10);
    expect(heightOf('speed 10 m/s')).toBe(10);
  });
  it('passes over notes above the headings and takes units from a line below them', () => {
    const table = read(
      '# an invented station\nStation: Lea, 12 m above the sea\n\ntime,speed,direction\n,km/h,deg\n2024-07-01 12:00,36,90\n',
    );
    expect(table.windSpeedMps[0]).toBeCloseTo(10, 5);
    expect(table.hourCount).toBe(1);
  });
});

describe('times as strangers write them', () => {
  it.each([
    ['2024-07-01T14:00:00Z', [7, 1, 14]],
    ['2024-07-01T14:00+01:00', [7, 1, 14]],
    ['2024/7/1 14:00', [7, 1, 14]],
    ['01.07.2024 14:00', [7, 1, 14]],
    ['13/07/2024 2:00 PM', [7, 13, 14]],
    ['07/13/2024 12:00 AM', [7, 12, 24]],
    ['20240701 1400', [7, 1, 14]],
    ['20240701:1400', [7, 1, 14]],
    ['2024070114', [7, 1, 14]],
    ['2024-07-01 24:00', [7, 1, 24]],
    ['2024-07-01 00:10', [7, 1, 1]],
  ])('%s', (stamp, expected) => {
    expect(stamps(`time,speed,direction\n${stamp},3,90\n`)).toEqual([expected]);
  });
  it('a date and a clock time, or year, month, day and hour, in columns of their own', () => {
    expect(stamps('Date,Hour,speed,direction\n2024-07-01,14,3,90\n2024-07-01,1500,3,90\n')).toEqual([
      [7, 1, 14],
      [7, 1, 15],
    ]);
    expect(stamps('Year,Month,Day,Hour,speed,direction\n2024,7,1,14,3,90\n')).toEqual([[7, 1, 14]]);
  });
  it('finds from the whole file whether the day or the month stands first', () => {
    expect(stamps('time,speed,direction\n03/04/2024 10:00,3,90\n25/04/2024 10:00,3,90\n')[0]).toEqual([
      4, 3, 10,
    ]);
    expect(stamps('time,speed,direction\n03/04/2024 10:00,3,90\n04/25/2024 10:00,3,90\n')[0]).toEqual([
      3, 4, 10,
    ]);
  });
});

describe('values as strangers write them', () => {
  const values = (speed: string, direction: string) => {
    const table = read(`time;speed;direction\n2024-07-01 12:00;${speed};${direction}\n`);
    return [table.windSpeedMps[0], table.windFromDeg[0]];
  };
  it('decimal commas, points of the compass, 0 and 360', () => {
    expect(values('3,5', 'SSW')).toEqual([3.5, 202.5]);
    expect(values('3', '0')).toEqual([3, 0]);
    expect(values('3', '360')).toEqual([3, 360]);
  });
  it.each(['', '-', 'NA', 'NaN', 'M', '-9999', '9999', '-99.9', '999.9'])('"%s" is no value', (nothing) => {
    expect(values(nothing, nothing)).toEqual([Number.NaN, Number.NaN]);
  });
  it('calm and variable winds have no direction', () => {
    expect(values('0', 'Calm')).toEqual([0, Number.NaN]);
    expect(values('2', 'VRB')).toEqual([2, Number.NaN]);
  });
});

describe('what cannot be read gives one sentence', () => {
  it.each([
    ['speed,direction\n3,90\n', 'names a speed and a direction but no time'],
    ['time,speed,direction\n31/31/2024 10:00,3,90\n', 'line 2, column 1 (time) holds "31/31/2024 10:00"'],
    [
      'time,speed,direction\n03/04/2024 10:00,3,90\n04/04/2024 10:00,3,90\n',
      'no date of the file says whether the day or the month stands first',
    ],
    ['time,speed,direction\n2024-07-01 10:00,fresh,90\n', 'line 2, column 2 (speed) holds "fresh"'],
    ['time,speed\n2024-07-01 10:00,3\n', 'begins with "time,speed"'],
  ])('case %#', (text, expected) => {
    expect(() => read(text)).toThrow(BadInputError);
    expect(() => read(text)).toThrow(expected);
  });
});
