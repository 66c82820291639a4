import { BadInputError } from '../../units/bad-input.ts';
import { dewPointC } from '../vapour.ts';
import { csvRows, expectWholeYears, measuredAt, numberWithin } from './csv-rows.ts';
import { typicalByHeader, typicalByYears } from './typical-year.ts';
import { type WeatherHour, type WeatherTable, weatherTable } from './weather-table.ts';

/** Columns of an EPW data line, from 0 (EnergyPlus Auxiliary Programs, "Weather Data Format Definition"). */
const YEAR = 0;
const MONTH = 1;
const DAY = 2;
const HOUR = 3;
const TEMPERATURE = 6;
const DEW_POINT = 7;
const HUMIDITY = 8;
const GLOBAL = 13;
const DIFFUSE = 15;
const WIND_FROM = 20;
const WIND_SPEED = 21;

/** Values the format marks as missing lie outside what these limits let through (9999 W m-2, 999 degrees, 999 m/s, 99.9 C). */
const MOST_WM2 = 1999;
const MOST_MPS = 100;

/** Where a header says where the hours come from: the source in its first line, and its comments. */
const headerTexts = (rows: readonly (readonly string[])[], periods: number): string[] => [
  rows[0][4] ?? '',
  ...rows.slice(1, periods).flatMap((row) => (/^COMMENTS/i.test(row[0]) ? [row.slice(1).join(', ')] : [])),
];

/** Reads an EnergyPlus weather file: a LOCATION line, header lines, then one line an hour, of one year or of several. */
export function readEpw(text: string, fileName: string): WeatherTable {
  const file = csvRows(text, fileName, ',');
  const { rows } = file;
  const [, city = ''] = rows[0];
  const periods = rows.findIndex((row) => row[0].toUpperCase() === 'DATA PERIODS');
  if (periods < 0) {
    throw new BadInputError(
      `${fileName} has a LOCATION line but no DATA PERIODS line, so its hours cannot be found.`,
    );
  }
  const perHour = numberWithin(file, periods, 2, 'records per hour', 1, 60);
  if (perHour !== 1) {
    throw new BadInputError(
      `${fileName}, line ${periods + 1}, column 3 gives ${perHour} records an hour; one is expected.`,
    );
  }
  const hours: WeatherHour[] = [];
  for (let row = periods + 1; row < rows.length; row++) {
    const temperatureC = measuredAt(file, row, TEMPERATURE, 'temperature', -90, 70);
    const dewC = measuredAt(file, row, DEW_POINT, 'dew point', -90, 70);
    const humidityPercent = measuredAt(file, row, HUMIDITY, 'relative humidity', 0.1, 110);
    hours.push({
      year: numberWithin(file, row, YEAR, 'year', 0, 9999),
      month: numberWithin(file, row, MONTH, 'month', 1, 12),
      day: numberWithin(file, row, DAY, 'day', 1, 31),
      hourEnd: numberWithin(file, row, HOUR, 'hour', 1, 24),
      temperatureC,
      // Where the file leaves one of the two out, the other says as much.
      dewPointC: Number.isNaN(dewC) ? dewPointC(temperatureC, humidityPercent) : dewC,
      globalWm2: measuredAt(file, row, GLOBAL, 'global radiation', 0, MOST_WM2),
      diffuseWm2: measuredAt(file, row, DIFFUSE, 'diffuse radiation', 0, MOST_WM2),
      windFromDeg: measuredAt(file, row, WIND_FROM, 'wind direction', 0, 360),
      windSpeedMps: measuredAt(file, row, WIND_SPEED, 'wind speed', 0, MOST_MPS),
    });
  }
  expectWholeYears(file, hours.length);
  const head = {
    format: 'EPW' as const,
    typical: typicalByHeader(headerTexts(rows, periods)) ?? typicalByYears(hours),
    place: city,
    latDeg: numberWithin(file, 0, 6, 'latitude', -90, 90),
    lonDeg: numberWithin(file, 0, 7, 'longitude', -180, 180),
    utcOffsetHours: numberWithin(file, 0, 8, 'hours from UTC', -12, 14),
  };
  return weatherTable(head, hours);
}
