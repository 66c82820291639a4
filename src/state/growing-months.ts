import { defaultGrowingSeason, type SiteRecord } from '../site/records/site.ts';

/** Months (0 = January) of which at least half the days lie in the growing season. */
export function growingMonths(site: SiteRecord, latDeg: number): ReadonlySet<number> {
  const { firstDay, lastDay } = site.growingSeason ?? defaultGrowingSeason(latDeg);
  const first = dayNumber(firstDay);
  const last = dayNumber(lastDay);
  const within = (day: number) => (first <= last ? day >= first && day <= last : day >= first || day <= last);
  const months = new Set<number>();
  for (let month = 0; month < 12; month++) {
    const days = new Date(Date.UTC(2023, month + 1, 0)).getUTCDate();
    let count = 0;
    for (let day = 1; day <= days; day++) if (within((month + 1) * 100 + day)) count++;
    if (count * 2 >= days) months.add(month);
  }
  return months;
}

const dayNumber = (monthDay: string): number =>
  Number(monthDay.slice(0, 2)) * 100 + Number(monthDay.slice(3));
