import { BadInputError } from '../../units/bad-input.ts';
import { readEpw } from './read-epw.ts';
import { looksLikeTmy3, readTmy3 } from './read-tmy3.ts';
import { looksLikeWindCsv, readWindCsv } from './read-wind-csv.ts';
import type { WeatherTable } from './weather-table.ts';

/** The beginning of a line, without what no screen can show. */
const shortened = (line: string): string => line.slice(0, 60).replace(/[^\x20-\x7e\u00a0-\uffff]/g, '');

/**
 * Reads a weather file of any format that is known, told apart by what is in it and not by its name.
 * Throws BadInputError with the file, line and column where it cannot be read.
 */
export function readWeatherFile(bytes: Uint8Array, fileName: string): WeatherTable {
  const text = new TextDecoder().decode(bytes).replace(/^\uFEFF/, '');
  if (text.trim() === '')
    throw new BadInputError(`${fileName} is empty; an hourly weather file is expected.`);
  const [first = '', second = ''] = text.slice(0, 20_000).split(/\r\n|\r|\n/);
  if (/^LOCATION,/i.test(first)) return readEpw(text, fileName);
  if (looksLikeTmy3(second)) return readTmy3(text, fileName);
  if (looksLikeWindCsv(text.slice(0, 20_000))) return readWindCsv(text, fileName);
  throw new BadInputError(
    `${fileName} is no weather file that is known here: an EPW begins with LOCATION, a TMY3 names "Date (MM/DD/YYYY)" in line 2, and a plain table names a time, a speed and a direction above its values; it begins with "${shortened(first)}".`,
  );
}
