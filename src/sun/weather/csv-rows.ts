import Papa from 'papaparse';
import { BadInputError } from '../../units/bad-input.ts';

/** The lines of a table of separated values, with what is needed to name a place in it. */
export interface CsvRows {
  readonly fileName: string;
  readonly rows: readonly (readonly string[])[];
}

export function csvRows(text: string, fileName: string, delimiter = ''): CsvRows {
  const { data } = Papa.parse<string[]>(text, { delimiter, skipEmptyLines: false });
  const rows = data.map((row) => row.map((value) => value.trim()));
  while (rows.length > 0 && rows[rows.length - 1].every((value) => value === '')) rows.pop();
  return { fileName, rows };
}

/** "weather.epw, line 12, column 21 (wind speed)": lines and columns count from 1. */
export const placeInFile = (file: CsvRows, row: number, column: number, what: string): string =>
  `${file.fileName}, line ${row + 1}, column ${column + 1} (${what})`;

/** A number, or NaN where the cell is blank. Throws BadInputError for anything else. */
function numberAt(file: CsvRows, row: number, column: number, what: string): number {
  const cells = file.rows[row];
  if (column >= cells.length) {
    throw new BadInputError(
      `${file.fileName}, line ${row + 1} breaks off after ${cells.length} columns; column ${column + 1} (${what}) is missing.`,
    );
  }
  const text = cells[column];
  if (text === '') return Number.NaN;
  const value = Number(text);
  if (Number.isFinite(value)) return value;
  throw new BadInputError(
    `${placeInFile(file, row, column, what)} holds "${text.slice(0, 40)}"; a number is expected.`,
  );
}

/** A number that must be there and lie between two limits. */
export function numberWithin(
  file: CsvRows,
  row: number,
  column: number,
  what: string,
  least: number,
  greatest: number,
): number {
  const value = numberAt(file, row, column, what);
  if (value >= least && value <= greatest) return value;
  const found = Number.isNaN(value) ? 'is blank' : `holds ${value}`;
  throw new BadInputError(
    `${placeInFile(file, row, column, what)} ${found}; a number from ${least} to ${greatest} is expected.`,
  );
}

/** A measured value; NaN where it is blank or beyond what can occur, which is how files mark what is missing. */
export function measuredAt(
  file: CsvRows,
  row: number,
  column: number,
  what: string,
  least: number,
  greatest: number,
): number {
  const value = numberAt(file, row, column, what);
  return value >= least && value <= greatest ? value : Number.NaN;
}

const HOURS_A_YEAR = 8760;
const HOURS_A_LEAP_YEAR = 8784;

/**
 * Throws where a file has more or fewer hours than its years have, each with or without a leap day.
 * @param mostYears so many at most.
 */
export function expectWholeYears(file: CsvRows, hours: number, mostYears = Number.POSITIVE_INFINITY): void {
  const years = Math.floor(hours / HOURS_A_YEAR);
  if (years >= 1 && years <= mostYears && hours <= years * HOURS_A_LEAP_YEAR) return;
  const several = mostYears > 1 ? ', or of several whole years,' : '';
  throw new BadInputError(
    `${file.fileName} ends at line ${file.rows.length} with ${hours} hours of weather; the ${HOURS_A_YEAR} hours of a year${several} are expected.`,
  );
}
