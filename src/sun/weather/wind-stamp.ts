/** An hour as a table of winds stamps it, by the clock it was written in. */
export interface Stamp {
  readonly year: number;
  readonly month: number;
  readonly day: number;
  readonly hour: number;
  readonly minute: number;
  /** "+02:00", "Z"; empty where it does not say. */
  readonly offset: string;
}
/** Which of day and month stands first in 03/04/2024. */
export type DayOrder = 'day first' | 'month first';

const CLOCK = String.raw`(?:[T ,]+(\d{1,2})(?:[:.h](\d\d)(?:[:.]\d\d(?:\.\d+)?)?)?\s*([AaPp])?\.?[Mm]?\.?)?`;
const OFFSET = String.raw`\s*(Z|UTC|GMT|[+-]\d\d(?::?\d\d)?)?`;
const YEAR_FIRST = new RegExp(String.raw`^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})${CLOCK}${OFFSET}$`);
const YEAR_LAST = new RegExp(String.raw`^(\d{1,2})([-/.])(\d{1,2})[-/.](\d{4})${CLOCK}${OFFSET}$`);
const RUN_ON = /^(\d{4})(\d\d)(\d\d)[T :]?(?:(\d\d):?(\d\d)?(?:\d\d)?)?\s*(Z)?$/;

/** Day or month first, by the first date that can be only one of them; null where every date could be both. */
export function dayOrder(texts: Iterable<string>): DayOrder | null {
  for (const text of texts) {
    const match = YEAR_LAST.exec(text.trim());
    if (!match) continue;
    // Dates with dots are written day first.
    if (match[2] === '.' || Number(match[1]) > 12) return 'day first';
    if (Number(match[3]) > 12) return 'month first';
  }
  return null;
}

/** Whether a text is a date that could be read both ways. */
export const isTwoWays = (text: string): boolean => YEAR_LAST.test(text.trim());

/** Reads a stamp; null where it is none. */
export function readStamp(text: string, order: DayOrder): Stamp | null {
  const trimmed = text.trim();
  const first = YEAR_FIRST.exec(trimmed);
  if (first) return checked(first[1], first[2], first[3], first.slice(4));
  const last = YEAR_LAST.exec(trimmed);
  if (last) {
    const [day, month] = order === 'day first' ? [last[1], last[3]] : [last[3], last[1]];
    return checked(last[4], month, day, last.slice(5));
  }
  const runOn = RUN_ON.exec(trimmed);
  return runOn ? checked(runOn[1], runOn[2], runOn[3], [runOn[4], runOn[5], '', runOn[6]]) : null;
}

function checked(
  yearText: string,
  monthText: string,
  dayText: string,
  [hourText = '0', minuteText = '0', half = '', offset = '']: (string | undefined)[],
): Stamp | null {
  const [year, month, day, minute] = [yearText, monthText, dayText, minuteText].map(Number);
  let hour = Number(hourText);
  if (half !== '') {
    if (hour < 1 || hour > 12) return null;
    hour = (hour % 12) + (half.toLowerCase() === 'p' ? 12 : 0);
  }
  const days = new Date(Date.UTC(year, month, 0)).getUTCDate();
  const good = month >= 1 && month <= 12 && day >= 1 && day <= days && hour <= 24 && minute < 60;
  return good ? { year, month, day, hour, minute, offset: offset.replace(/UTC|GMT/, 'Z') } : null;
}
