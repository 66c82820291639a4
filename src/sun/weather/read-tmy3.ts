import { BadInputError } from '../../units/bad-input.ts';
import {
  type CsvRows,
  csvRows,
  expectWholeYears,
  measuredAt,
  numberWithin,
  placeInFile,
} from './csv-rows.ts';
import { typicalByYears } from './typical-year.ts';
import { type WeatherHour, type WeatherTable, weatherTable } from './weather-table.ts';

/** Column headings of TMY3 (Wilcox & Marion 2008, Users Manual for TMY3 Data Sets, NREL/TP-581-43156). */
const DATE = 'Date (MM/DD/YYYY)';
const TIME = 'Time (HH:MM)';
const HEADINGS = 1;

export const looksLikeTmy3 = (secondLine: string): boolean => secondLine.includes(DATE);

function columnOf(file: CsvRows, heading: string): number {
  const column = file.rows[HEADINGS].indexOf(heading);
  if (column >= 0) return column;
  throw new BadInputError(
    `${file.fileName}, line ${HEADINGS + 1} has no column "${heading}", which TMY3 files have.`,
  );
}

function parts(file: CsvRows, row: number, column: number, what: string, pattern: RegExp): number[] {
  const cell = file.rows[row][column] ?? '';
  const match = pattern.exec(cell);
  if (match) return match.slice(1).map(Number);
  throw new BadInputError(
    `${placeInFile(file, row, column, what)} holds "${cell.slice(0, 40)}"; a ${what} is expected.`,
  );
}

/** Reads a TMY3 table: a station line, a line of headings, then one line an hour whose time is the hour's end. */
export function readTmy3(text: string, fileName: string): WeatherTable {
  const file = csvRows(text, fileName, ',');
  const column = {
    date: columnOf(file, DATE),
    time: columnOf(file, TIME),
    global: columnOf(file, 'GHI (W/m^2)'),
    diffuse: columnOf(file, 'DHI (W/m^2)'),
    temperature: columnOf(file, 'Dry-bulb (C)'),
    // Light and wind do without it.
    dewPoint: file.rows[HEADINGS].indexOf('Dew-point (C)'),
    windFrom: columnOf(file, 'Wdir (degrees)'),
    windSpeed: columnOf(file, 'Wspd (m/s)'),
  };
  const hours: WeatherHour[] = [];
  for (let row = HEADINGS + 1; row < file.rows.length; row++) {
    const [month, day, year] = parts(file, row, column.date, 'date', /^(\d\d?)\/(\d\d?)\/(\d{4})$/);
    const [hourEnd] = parts(file, row, column.time, 'time', /^(\d\d?):\d\d$/);
    if (month < 1 || month > 12 || day < 1 || day > 31 || hourEnd < 1 || hourEnd > 24) {
      throw new BadInputError(
        `${fileName}, line ${row + 1} is stamped ${file.rows[row][column.date]} ${file.rows[row][column.time]}, which is no hour of a year.`,
      );
    }
    hours.push({
      year,
      month,
      day,
      hourEnd,
      globalWm2: measuredAt(file, row, column.global, 'global radiation', 0, 1999),
      diffuseWm2: measuredAt(file, row, column.diffuse, 'diffuse radiation', 0, 1999),
      windFromDeg: measuredAt(file, row, column.windFrom, 'wind direction', 0, 360),
      windSpeedMps: measuredAt(file, row, column.windSpeed, 'wind speed', 0, 100),
      temperatureC: measuredAt(file, row, column.temperature, 'temperature', -90, 70),
      dewPointC:
        column.dewPoint < 0 ? Number.NaN : measuredAt(file, row, column.dewPoint, 'dew point', -90, 70),
    });
  }
  expectWholeYears(file, hours.length, 1);
  const [, name = ''] = file.rows[0];
  const head = {
    format: 'TMY3' as const,
    typical: typicalByYears(hours) ?? 'a TMY3 file holds a typical year',
    place: name,
    utcOffsetHours: numberWithin(file, 0, 3, 'hours from UTC', -12, 14),
    latDeg: numberWithin(file, 0, 4, 'latitude', -90, 90),
    lonDeg: numberWithin(file, 0, 5, 'longitude', -180, 180),
  };
  return weatherTable(head, hours);
}
