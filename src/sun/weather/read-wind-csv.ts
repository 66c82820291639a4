import { BadInputError } from '../../units/bad-input.ts';
import { type CsvRows, csvRows, measuredAt, placeInFile } from './csv-rows.ts';
import { type WeatherHour, type WeatherTable, weatherTable } from './weather-table.ts';

/** Headings by which a column is known, small letters. */
const TIME_WORDS = /^(time|date|datetime|timestamp|date.?time)\b/;
const SPEED_WORDS = /(wind.?)?(speed|spd|velocity)/;
const DIRECTION_WORDS = /dir|from|bearing/;

/** Metres a second in one unit of a speed heading; knots and miles by definition. */
const SPEED_UNITS: readonly (readonly [RegExp, number])[] = [
  [/km ?\/? ?h|kmh|kph/, 1 / 3.6],
  [/knot|\bkn\b|_kn\b|\bkt\b|_kt\b/, 1852 / 3600],
  [/mph|mi ?\/ ?h/, 1609.344 / 3600],
];

interface Columns {
  readonly time: number;
  readonly speed: number;
  readonly direction: number;
  readonly mpsAUnit: number;
}

function columnsOf(headings: readonly string[]): Columns | null {
  const words = headings.map((heading) => heading.toLowerCase());
  const time = words.findIndex((word) => TIME_WORDS.test(word));
  const speed = words.findIndex((word) => SPEED_WORDS.test(word) && !word.includes('gust'));
  const direction = words.findIndex((word, i) => i !== speed && DIRECTION_WORDS.test(word));
  if (time < 0 || speed < 0 || direction < 0) return null;
  const unit = SPEED_UNITS.find(([pattern]) => pattern.test(words[speed]));
  return { time, speed, direction, mpsAUnit: unit ? unit[1] : 1 };
}

export const looksLikeWindCsv = (firstLine: string): boolean =>
  columnsOf(firstLine.split(/[,;\t]/).map((cell) => cell.trim().replace(/^"|"$/g, ''))) !== null;

const STAMP = /^(\d{4})-(\d\d)-(\d\d)(?:[T ](\d\d):(\d\d)(?::\d\d(?:\.\d+)?)?)?\s*(Z|[+-]\d\d:?\d\d)?$/;

/** The hour that a stamp ends; 00:00 ends the day before. */
function hourOf(
  file: CsvRows,
  row: number,
  column: number,
): { hour: [number, number, number]; offset: string } {
  const text = file.rows[row][column] ?? '';
  const match = STAMP.exec(text);
  const [year, month, day, hour, minute] = (match ?? []).slice(1).map((part) => Number(part ?? 0));
  const endMs = Date.UTC(year, month - 1, day, hour, minute);
  if (!match || month < 1 || month > 12 || day < 1 || day > 31 || hour > 24 || Number.isNaN(endMs)) {
    throw new BadInputError(
      `${placeInFile(file, row, column, 'time')} holds "${text.slice(0, 40)}"; a time such as 2024-03-31 14:00 is expected.`,
    );
  }
  const within = new Date(endMs - 60_000);
  return {
    hour: [within.getUTCMonth() + 1, within.getUTCDate(), within.getUTCHours() + 1],
    offset: match[6] ?? 'Z',
  };
}

const offsetHours = (text: string): number =>
  text === 'Z' ? 0 : Number(text.slice(0, 3)) + (text[0] === '-' ? -1 : 1) * (Number(text.slice(-2)) / 60);

/**
 * Reads a plain table of winds with a heading line that names a time, a speed (m/s unless the heading says km/h, kn
 * or mph) and a direction in degrees. Stamps end the hour, in whatever standard time they are written in.
 */
export function readWindCsv(text: string, fileName: string): WeatherTable {
  const file = csvRows(text, fileName);
  const columns = columnsOf(file.rows[0]);
  if (!columns) {
    throw new BadInputError(
      `${fileName}, line 1 must name a time, a speed and a direction; found "${file.rows[0].join(', ').slice(0, 80)}".`,
    );
  }
  if (file.rows.length < 2) throw new BadInputError(`${fileName} has a heading line but no winds below it.`);
  const hours: WeatherHour[] = [];
  let offset = 'Z';
  for (let row = 1; row < file.rows.length; row++) {
    const stamp = hourOf(file, row, columns.time);
    offset = stamp.offset;
    const [month, day, hourEnd] = stamp.hour;
    const speed = measuredAt(file, row, columns.speed, 'speed', 0, 400) * columns.mpsAUnit;
    hours.push({
      month,
      day,
      hourEnd,
      globalWm2: Number.NaN,
      diffuseWm2: Number.NaN,
      windFromDeg: measuredAt(file, row, columns.direction, 'direction', 0, 360),
      windSpeedMps: speed <= 100 ? speed : Number.NaN,
      temperatureC: Number.NaN,
    });
  }
  const head = {
    format: 'CSV' as const,
    place: '',
    latDeg: null,
    lonDeg: null,
    utcOffsetHours: offsetHours(offset),
  };
  return weatherTable(head, hours);
}
