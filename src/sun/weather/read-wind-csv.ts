import { BadInputError } from '../../units/bad-input.ts';
import { pointByLetters } from '../../units/compass.ts';
import { type CsvRows, csvRows, placeInFile } from './csv-rows.ts';
import { type WeatherHour, type WeatherTable, weatherTable } from './weather-table.ts';
import { unitOf, type WindColumns, windColumns } from './wind-columns.ts';
import { type DayOrder, dayOrder, isTwoWays, readStamp, type Stamp } from './wind-stamp.ts';

/** Lines among which the headings are looked for: stations write notes above them. */
const MOST_LINES_ABOVE = 40;
/** No hour's mean wind was ever stronger; what is above marks what is missing. */
const MOST_MPS = 100;
/** How tables write that there is no value. */
const MISSING = /^(|-+|na|n\/a|nan|null|none|m|missing|\?|-?9{3,}(\.9*0*)?)$/i;
/** Directions that are none: no wind, or from everywhere. */
const NO_DIRECTION = /^(calm|c|vrb|var|variable)$/i;

function headingLine({ rows }: CsvRows): { row: number; columns: WindColumns } | null {
  for (let row = 0; row < Math.min(rows.length, MOST_LINES_ABOVE); row++) {
    const columns = windColumns(rows[row]);
    if (!('missing' in columns)) return { row, columns };
  }
  return null;
}

/** A table that names at least a speed and a direction in one of its first lines. */
export function looksLikeWindCsv(text: string): boolean {
  const { rows } = csvRows(text.split(/\r\n|\r|\n/, MOST_LINES_ABOVE).join('\n'), '');
  return rows.some((row) => {
    const columns = windColumns(row);
    return !('missing' in columns) || columns.missing === 'a time';
  });
}

/** A number with a point or a comma, NaN where it says that there is none. */
function valueAt(file: CsvRows, row: number, column: number, what: string): number {
  const cells = file.rows[row];
  if (column >= cells.length) {
    throw new BadInputError(
      `${file.fileName}, line ${row + 1} breaks off after ${cells.length} columns; column ${column + 1} (${what}) is missing.`,
    );
  }
  const text = cells[column];
  if (MISSING.test(text)) return Number.NaN;
  const value = Number(text.replace(',', '.'));
  if (Number.isFinite(value)) return value;
  throw new BadInputError(
    `${placeInFile(file, row, column, what)} holds "${text.slice(0, 40)}"; a number is expected.`,
  );
}

/** Degrees, or a point of the compass; NaN where there is none. */
function directionAt(file: CsvRows, row: number, column: number): number {
  const text = file.rows[row][column] ?? '';
  if (NO_DIRECTION.test(text)) return Number.NaN;
  const point = pointByLetters(text);
  if (point) return point.azimuthDeg;
  const deg = valueAt(file, row, column, 'direction');
  return deg >= 0 && deg <= 360 ? deg : Number.NaN;
}

/** No air was ever colder or warmer; what lies outside marks what is missing. */
const [COLDEST_C, WARMEST_C] = [-90, 70];

/** Degrees Celsius; NaN where there is no column or no value. */
function temperatureAt(file: CsvRows, row: number, column: WindColumns['temperature']): number {
  if (!column) return Number.NaN;
  const value = valueAt(file, row, column.index, 'temperature');
  const celsius = column.fahrenheit ? (value - 32) / 1.8 : value;
  return celsius >= COLDEST_C && celsius <= WARMEST_C ? celsius : Number.NaN;
}

function stampText(cells: readonly string[], { time }: WindColumns): string {
  const at = (column: number) => cells[column] ?? '';
  if (time.as === 'stamp') return at(time.stamp);
  // "1300" is how some stations write a clock.
  const clock = (text: string) => text.replace(/^(\d{1,2})(\d\d)$/, '$1:$2');
  if (time.as === 'date and clock') return `${at(time.date)} ${clock(at(time.clock))}`;
  return `${at(time.year)}-${at(time.month)}-${at(time.day)} ${clock(at(time.hour))}`;
}

const firstTimeColumn = ({ time }: WindColumns): number =>
  time.as === 'stamp' ? time.stamp : time.as === 'parts' ? time.year : time.date;

function orderOf(file: CsvRows, first: number, columns: WindColumns): DayOrder {
  const texts = file.rows.slice(first).map((cells) => stampText(cells, columns));
  const order = dayOrder(texts);
  if (order === null && isTwoWays(texts[0]))
    throw new BadInputError(
      `${placeInFile(file, first, firstTimeColumn(columns), 'time')} holds "${texts[0].slice(0, 40)}" and no date of the file says whether the day or the month stands first; dates such as 2024-03-31 are expected.`,
    );
  return order ?? 'day first';
}

/** The hour that a stamp ends, with its year, month and day; 00:00 ends the day before. */
function hourOf({ year, month, day, hour, minute }: Stamp): [number, number, number, number] {
  const within = new Date(Date.UTC(year, month - 1, day, hour, minute) - 60_000);
  return [within.getUTCFullYear(), within.getUTCMonth() + 1, within.getUTCDate(), within.getUTCHours() + 1];
}

const offsetHours = (text: string): number =>
  /^[+-]/.test(text)
    ? Number(text.slice(0, 3)) + (text[0] === '-' ? -1 : 1) * (Number(text.slice(3).replace(':', '')) / 60)
    : 0;

/**
 * Reads a plain table of winds: among its first lines one that names a time (a stamp, a date and a clock time, or
 * year, month, day and hour), a speed (m/s unless the heading, or a line of units below it, says km/h, kn, mph or
 * ft/s) and a direction (degrees or points of the compass); a temperature (°C, or °F if the heading says so) as well
 * where there is one. Stamps end the hour, in whatever clock they are written.
 */
export function readWindCsv(text: string, fileName: string): WeatherTable {
  const file = csvRows(text, fileName);
  const heading = headingLine(file);
  if (!heading) {
    const [nearest] = file.rows
      .slice(0, MOST_LINES_ABOVE)
      .map((cells) => ({ cells, columns: windColumns(cells) }))
      .filter(({ columns }) => 'missing' in columns && columns.missing === 'a time');
    throw new BadInputError(
      `${fileName} names a speed and a direction but no time: a column "time", or "date" and "hour", is expected; found "${nearest.cells.join(', ').slice(0, 80)}".`,
    );
  }
  const { columns } = heading;
  let first = heading.row + 1;
  let { mpsAUnit } = columns;
  // A line of units may stand under the headings.
  const units = unitOf(file.rows[first]?.[columns.speed] ?? '');
  if (units !== null) {
    mpsAUnit = units;
    first++;
  }
  if (file.rows.length <= first)
    throw new BadInputError(`${fileName} has a heading line but no winds below it.`);
  const order = orderOf(file, first, columns);
  const hours: WeatherHour[] = [];
  let offset = '';
  for (let row = first; row < file.rows.length; row++) {
    const cells = file.rows[row];
    if (cells.every((cell) => cell === '') || cells[0].startsWith('#')) continue;
    const written = stampText(cells, columns);
    const stamp = readStamp(written, order);
    if (!stamp)
      throw new BadInputError(
        `${placeInFile(file, row, firstTimeColumn(columns), 'time')} holds "${written.slice(0, 40)}"; a time such as 2024-03-31 14:00 is expected.`,
      );
    offset = stamp.offset;
    const [year, month, day, hourEnd] = hourOf(stamp);
    const speed = valueAt(file, row, columns.speed, 'speed') * mpsAUnit;
    hours.push({
      year,
      month,
      day,
      hourEnd,
      globalWm2: Number.NaN,
      diffuseWm2: Number.NaN,
      windFromDeg: directionAt(file, row, columns.direction),
      windSpeedMps: speed >= 0 && speed <= MOST_MPS ? speed : Number.NaN,
      temperatureC: temperatureAt(file, row, columns.temperature),
    });
  }
  const head = {
    format: 'CSV' as const,
    place: '',
    latDeg: null,
    lonDeg: null,
    utcOffsetHours: offsetHours(offset),
    ...(columns.heightM === null ? {} : { windHeightM: columns.heightM }),
  };
  return weatherTable(head, hours);
}
