import { defaultGrowingSeason, type SiteRecord } from '../site/records/site.ts';

const daysInYear = (year: number): number =>
  new Date(Date.UTC(year, 1, 29)).getUTCMonth() === 1 ? 366 : 365;

const dayOf = (year: number, monthDay: string): number => {
  const [month, day] = monthDay.split('-').map(Number);
  return (Date.UTC(year, month - 1, day) - Date.UTC(year, 0, 1)) / 86_400_000;
};

/** 1 for each day of the growing season in a calendar year; a season over the turn of the year takes both ends of the same year. */
export function growingDays(site: SiteRecord, latDeg: number, calendarYear: number): Uint8Array {
  const season = site.growingSeason ?? defaultGrowingSeason(latDeg);
  const first = dayOf(calendarYear, season.firstDay);
  const last = dayOf(calendarYear, season.lastDay);
  const days = new Uint8Array(daysInYear(calendarYear));
  for (let day = 0; day < days.length; day++) {
    const inside = first <= last ? day >= first && day <= last : day >= first || day <= last;
    days[day] = inside ? 1 : 0;
  }
  return days;
}
