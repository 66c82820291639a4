import { MONTHS } from '../units/months.ts';
import { defaultGrowingSeason, type SiteRecord } from './records/site.ts';

const parts = (monthDay: string): { month: number; day: number } => ({
  month: Number(monthDay.slice(0, 2)) - 1,
  day: Number(monthDay.slice(3)),
});
/** Days of a month in a year that is no leap year. */
const lengthOf = (month: number): number => new Date(Date.UTC(2023, month + 1, 0)).getUTCDate();

/** The growing season as a span: "April–September" where it is made of whole months, else "15 April–10 October". */
export function seasonWords(site: SiteRecord, latDeg: number): string {
  const season = site.growingSeason ?? defaultGrowingSeason(latDeg);
  const first = parts(season.firstDay);
  const last = parts(season.lastDay);
  if (first.day === 1 && last.day >= lengthOf(last.month))
    return first.month === last.month ? MONTHS[first.month] : `${MONTHS[first.month]}–${MONTHS[last.month]}`;
  return `${first.day} ${MONTHS[first.month]}–${last.day} ${MONTHS[last.month]}`;
}

/** The month (0 = January) that holds the middle of the growing season. */
export function middleOfSeason(site: SiteRecord, latDeg: number): number {
  const season = site.growingSeason ?? defaultGrowingSeason(latDeg);
  const begins = parts(season.firstDay);
  const ends = parts(season.lastDay);
  const first = begins.month + (begins.day - 1) / lengthOf(begins.month);
  const last = ends.month + ends.day / lengthOf(ends.month);
  return Math.floor((first + (last < first ? last + 12 : last)) / 2) % 12;
}
