import { MONTHS } from '../../units/months.ts';
import type { FrostOfYear, FrostYears } from './frost-years.ts';

const dayWords = ({ frost }: FrostOfYear): string =>
  frost === null
    ? 'none'
    : `${frost.day} ${MONTHS[frost.month - 1]} ${frost.year} (${frost.leastC.toFixed(1).replace('-', '−')} °C)`;

/** Later in its half year: days are compared by month and day, a southern half year goes over the turn of the year. */
const order = ({ year, frost }: FrostOfYear): number =>
  frost === null ? Number.NaN : (frost.year - year) * 372 + frost.month * 31 + frost.day;

function extreme(all: readonly FrostOfYear[], which: 'latest' | 'earliest'): FrostOfYear | null {
  const known = all.filter(({ frost }) => frost !== null);
  if (known.length === 0) return null;
  return known.reduce((a, b) => ((which === 'latest' ? order(b) > order(a) : order(b) < order(a)) ? b : a));
}

const halfWords = (all: readonly FrostOfYear[], what: string, which: 'latest' | 'earliest'): string[] => {
  if (all.length === 0) return [];
  const found = extreme(all, which);
  if (all.length === 1) return [`${what}: ${dayWords(all[0])}.`];
  if (!found) return [`${what}: none in ${all.length} years.`];
  return [
    `${what}, ${which} of ${all.length} years: ${dayWords(found)}; ${all.map((one) => dayWords(one)).join(', ')}.`,
  ];
};

const span = (values: readonly number[]): string => {
  const [low, high] = [Math.round(Math.min(...values)), Math.round(Math.max(...values))];
  return low === high ? `${low}` : `${low} to ${high}`;
};

/** Frosts and heat in sentences; one that says why where a file cannot tell. */
export function frostSentences(found: FrostYears): string[] {
  const said = [
    ...halfWords(found.springs, 'Last spring frost', 'latest'),
    ...halfWords(found.autumns, 'First autumn frost', 'earliest'),
    ...(found.heat.length === 0
      ? []
      : [
          `Heat over the growing season${found.heat.length > 1 ? `, ${found.heat.length} years` : ''}: ${span(found.heat.map(({ above5 }) => above5))} degree-days above 5 °C, ${span(found.heat.map(({ above10 }) => above10))} above 10 °C.`,
        ]),
  ];
  return said.length > 0 ? said : ['Too little of any half year has a temperature to tell its frosts.'];
}
