/** The hours of sun that each thing takes at a spot, as rows of a table and as sentences. */
import { MONTHS } from '../units/months.ts';
import type { HorizonHours, HorizonInput, HorizonPeriod } from './horizon-input.ts';

/** Hours of a row in each period. */
export type HoursOfPeriods = Readonly<Record<HorizonPeriod, number>>;

export interface LostRow {
  /** Index of the thing; null for the land, for what is shared, and for sums. */
  readonly thing: number | null;
  readonly label: string;
  readonly hours: HoursOfPeriods;
}

export interface LostTable {
  /** The things and the land that take half an hour or more in the year, most in the period first. */
  readonly takers: readonly LostRow[];
  /** Taken by two or more in line, or by things too small for a row: comes back only when all of them are gone. */
  readonly together: LostRow;
  readonly got: LostRow;
  readonly open: LostRow;
}

/** Less than this in a year has no row, hours. */
const LEAST_HOURS = 0.5;
const THE_LAND = 'The land itself';

export function lostTable({ things, hours }: HorizonInput, period: HorizonPeriod): LostTable {
  const row = (thing: number | null, label: string, of: (hours: HorizonHours) => number): LostRow => ({
    thing,
    label,
    hours: { month: of(hours.month), season: of(hours.season), year: of(hours.year) },
  });
  const all = [
    ...things.map(({ label }, thing) => row(thing, label, ({ toThings }) => toThings[thing])),
    row(null, THE_LAND, ({ toLand }) => toLand),
  ];
  const takers = all
    .filter((each) => each.hours.year >= LEAST_HOURS)
    .sort((a, b) => b.hours[period] - a.hours[period] || b.hours.year - a.hours.year);
  const small = all.filter((each) => each.hours.year < LEAST_HOURS);
  const sumOf = (which: HorizonPeriod) => small.reduce((sum, each) => sum + each.hours[which], 0);
  return {
    takers,
    together: {
      thing: null,
      label: 'Two or more in line',
      hours: {
        month: hours.month.shared + sumOf('month'),
        season: hours.season.shared + sumOf('season'),
        year: hours.year.shared + sumOf('year'),
      },
    },
    got: row(null, 'Sun that reaches the spot', ({ got }) => got),
    open: row(null, 'Sun under an open sky', ({ open }) => open),
  };
}

/** "July", "April–September", "the whole year". */
export const periodWords = ({ view, seasonWords }: HorizonInput, period: HorizonPeriod): string =>
  period === 'month' ? MONTHS[view.month] : period === 'season' ? seasonWords : 'the whole year';

const sentenceCase = (label: string): string => label[0].toUpperCase() + label.slice(1);

const wholeHours = (hours: number): string => {
  const whole = Math.round(hours);
  return whole === 0 && hours > 0 ? 'less than 1 hour' : whole === 1 ? '1 hour' : `${whole} hours`;
};

/** "Norway spruce belt takes 212 hours, April–September." */
export function takesSentence(input: HorizonInput, period: HorizonPeriod): string {
  const { takers } = lostTable(input, period);
  const when = periodWords(input, period);
  const first = takers.find(({ hours }) => hours[period] >= LEAST_HOURS);
  if (!first) return `Nothing takes sun from this spot, ${when}.`;
  return `${sentenceCase(first.label)} takes ${wholeHours(first.hours[period])}, ${when}.`;
}

const grouped = (hours: number): string => Math.round(hours).toLocaleString('en-GB');

/** The share of the possible hours of sun that reaches the spot, 0 to 1; 1 where the sun does not rise. */
export const gotShare = ({ hours }: HorizonInput, period: HorizonPeriod): number =>
  hours[period].open > 0 ? hours[period].got / hours[period].open : 1;

/** "1,402 of 2,295 possible hours of sun reach the spot". */
export const gotWords = ({ hours }: HorizonInput, period: HorizonPeriod): string =>
  `${grouped(hours[period].got)} of ${grouped(hours[period].open)} possible hours of sun reach the spot`;

/** "1,402 of 2,295 possible hours of sun reach the spot, 61 %, April–September." */
export const gotSentence = (input: HorizonInput, period: HorizonPeriod): string =>
  `${gotWords(input, period)}, ${Math.round(100 * gotShare(input, period))} %, ${periodWords(input, period)}.`;

/** How the figures of the table hang together. */
export const HOURS_EXPLAINED =
  'What a thing takes is the sun that would come back if it alone were gone. Where two stand in line, sun comes back only when both are gone.';
