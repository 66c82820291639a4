import { expect, it } from 'vitest';
import { readWeatherFile } from '../../src/sun/weather/read-weather-file.ts';
import { epw, tmy3 } from './weather-files.ts';

const read = (text: string, name: string) => readWeatherFile(new TextEncoder().encode(text), name);
/** The file with one cell of every hour changed. */
const withCells = (text: string, cells: Readonly<Record<number, string>>): string =>
  text
    .split('\n')
    .map((line) => {
      const row = line.split(',');
      if (row.length < 30) return line;
      for (const [column, value] of Object.entries(cells)) row[Number(column)] = value;
      return row.join(',');
    })
    .join('\n');

it('an EPW file gives its dew point, or the one that its humidity amounts to', () => {
  expect(read(withCells(epw(), { 7: '6.5' }), 'a.epw').dewPointC[100]).toBeCloseTo(6.5, 5);
  // 11.5 degrees at half humidity: 1.357 kPa / 2 is saturated at 1.45 degrees.
  expect(read(withCells(epw(), { 7: '99.9', 8: '50' }), 'b.epw').dewPointC[100]).toBeCloseTo(1.45, 1);
  expect(read(withCells(epw(), { 7: '99.9', 8: '999' }), 'c.epw').dewPointC[100]).toBeNaN();
});

it('a TMY3 file without dew points is read all the same', () => {
  expect(read(tmy3(), 'd.csv').dewPointC[100]).toBeNaN();
});
