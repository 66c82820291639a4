import type { PaceBand } from '../growth/pace-band.ts';
import { differenceOf, isBand, type Measure, type MeasureUnit, type MeasureValue } from './measures.ts';

/** How lengths are put to a person, in metres or feet. */
export interface MeasureFormat {
  readonly metres: (lengthM: number) => string;
  /** As it stands beside a sum; empty: not said. */
  readonly currency: string;
}

const NONE = '–';
const MINUS = '−';

/** Years as words: "year 9 (7 to 12)", "year 7 at the earliest", "not by year 40". */
export function yearWords({ slow, usual, fast }: PaceBand<number | null>, lastYear: number): string {
  const first = fast ?? usual;
  if (first === null) return `not by year ${lastYear}`;
  if (usual === null) return `year ${first} at the earliest`;
  if (slow === null) return `year ${usual} (${first} to after ${lastYear})`;
  return first === slow ? `year ${usual}` : `year ${usual} (${first} to ${slow})`;
}

function one(value: number, unit: MeasureUnit, { metres, currency }: MeasureFormat): string {
  switch (unit) {
    case 'share':
      return `${Math.round(value * 100)} %`;
    case 'm':
      return metres(value);
    case 'money':
      return currency ? `${sum(value)} ${currency}` : sum(value);
    case 'year':
      return `year ${value}`;
    default:
      return String(value);
  }
}

const sum = (money: number): string =>
  money.toLocaleString('en-GB', { maximumFractionDigits: money < 100 ? 2 : 0 });

/** A figure as the table has it. @param lastYear the last that was looked at */
export function valueWords(
  value: MeasureValue,
  unit: MeasureUnit,
  format: MeasureFormat,
  lastYear: number,
): string {
  if (value === null) return NONE;
  if (!isBand(value)) return one(value, unit, format);
  if (unit === 'year') return yearWords(value, lastYear);
  if (value.slow === null || value.usual === null || value.fast === null) return NONE;
  const usual = one(value.usual, unit, format);
  const ends = [value.slow, value.fast].sort((a, b) => a - b).map((end) => one(end, unit, format));
  return ends[0] === ends[1] ? usual : `${usual} (${ends[0].replace(' %', '')} to ${ends[1]})`;
}

/** How much more the second is: "+6 years", "+6 to +8 years", "−12 m"; a dash where it cannot be said. */
export function differenceWords(measure: Measure, format: MeasureFormat): string {
  const value = differenceOf(measure);
  const { unit } = measure;
  const values = isBand(value) ? [value.slow, value.usual, value.fast] : [value];
  if (values.some((each) => each === null)) return NONE;
  const known = values as number[];
  const [low, high] = [Math.min(...known), Math.max(...known)];
  const unitWord =
    unit === 'year' || unit === 'calendar' ? (Math.abs(low) === 1 && low === high ? ' year' : ' years') : '';
  const signed = (each: number) => {
    const size = Math.abs(each);
    const text = unitWord || unit === 'count' ? String(size) : one(size, unit, format);
    return Number.parseFloat(text) === 0 ? text : `${each < 0 ? MINUS : '+'}${text}`;
  };
  if (signed(low) === signed(high)) return `${signed(low)}${unitWord}`;
  const start = unit === 'share' ? signed(low).replace(' %', '') : signed(low);
  return `${start} to ${signed(high)}${unitWord}`;
}
