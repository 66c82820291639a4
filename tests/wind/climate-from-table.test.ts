import { describe, expect, it } from 'vitest';
import { BadInputError } from '../../src/units/bad-input.ts';
import { windFromTable } from '../../src/wind/climate-from-table.ts';

describe('a small table of winds', () => {
  it.each([
    ['typed with spaces', 'SW 18 5.2\nNE 7 6.0\n'],
    ['pasted with tabs and headings', 'From\tHours %\tMean m/s\nSW\t18\t5.2\nNE\t7\t6.0'],
    ['semicolons and decimal commas', 'south-west;18;5,2\nnorth east;7;6,0'],
    ['commas', 'direction,share,speed\n225,0.18,5.2\n45,0.07,6.0\n'],
    ['percent signs and units', '225° 18 % 5.2 m/s\n45 7 % 6 m/s'],
  ])('%s', (_, text) => {
    const { sectors } = windFromTable(text, 1);
    expect(sectors).toEqual([
      { fromDeg: 225, frequency: 0.18, meanSpeedMps: 5.2 },
      { fromDeg: 45, frequency: 0.07, meanSpeedMps: 6 },
    ]);
  });
  it('takes seasons, calms of each, and the unit of its heading', () => {
    const { sectors, calmShareBySeason, calmShare } = windFromTable(
      'from share speed (km/h) season\nSW 60 18 growing\nN 30 9 growing\ncalm 10 growing\nNE 95 36 rest of the year\ncalm 5 rest',
      1,
    );
    expect(sectors).toEqual([
      { fromDeg: 225, frequency: 0.6, meanSpeedMps: 5, season: 'growing' },
      { fromDeg: 0, frequency: 0.3, meanSpeedMps: 2.5, season: 'growing' },
      { fromDeg: 45, frequency: 0.95, meanSpeedMps: 10, season: 'rest' },
    ]);
    expect(calmShareBySeason).toEqual({ growing: 0.1, rest: 0.05 });
    expect(calmShare).toBe(0);
  });
  it('takes the person’s unit where the table names none', () => {
    expect(windFromTable('W 100 10', 1852 / 3600).sectors[0].meanSpeedMps).toBe(5.14);
  });
  it('says where shares do not add up to all hours', () => {
    expect(windFromTable('W 40 5\nE 40 3', 1).notes).toEqual([
      'The shares of the growing season add to 80 %; they are taken as parts of all its hours.',
      'The shares of the rest of the year add to 80 %; they are taken as parts of all its hours.',
    ]);
    expect(windFromTable('W 60 5\nE 40 3', 1).notes).toEqual([]);
  });
  it.each([
    ['', 'No wind is in the table yet'],
    ['calm 100', 'No wind is in the table yet'],
    ['SW 18', 'Line 1 is "sw 18"; a direction, a share of the hours and a mean speed are expected'],
    ['SW 18 5\nup 3 4', 'Line 2 begins with "up"; a direction such as SW, south-west or 225 is expected'],
    ['400 3 4', 'Line 1 has the direction 400'],
    ['SW 18 5 spring', 'Line 1 ends with "spring"'],
    ['SW 18 250', 'Line 1 has a mean of 250 m/s'],
  ])('refuses %j with one sentence', (text, sentence) => {
    expect(() => windFromTable(text, 1)).toThrow(BadInputError);
    expect(() => windFromTable(text, 1)).toThrow(sentence);
  });
});
