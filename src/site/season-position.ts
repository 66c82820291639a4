import { defaultGrowingSeason, type SiteRecord } from './records/site.ts';

const DAY_MS = 86_400_000;
const dayMs = (year: number, monthDay: string): number => Date.parse(`${year}-${monthDay}T00:00:00Z`);

/**
 * Where a day lies among the growing seasons: Y at the end of the season that began in calendar year Y and until the
 * next begins; within a season the share of its days is added to the year before.
 * @param date YYYY-MM-DD
 * @param latDeg decides the season where the site gives none.
 */
export function seasonPosition(
  site: Pick<SiteRecord, 'growingSeason'>,
  latDeg: number,
  date: string,
): number {
  const { firstDay, lastDay } = site.growingSeason ?? defaultGrowingSeason(latDeg);
  const atMs = Date.parse(`${date.slice(0, 10)}T00:00:00Z`);
  const calendarYear = Number(date.slice(0, 4));
  const year = atMs < dayMs(calendarYear, firstDay) ? calendarYear - 1 : calendarYear;
  const beginsMs = dayMs(year, firstDay);
  const endsMs = dayMs(lastDay < firstDay ? year + 1 : year, lastDay) + DAY_MS;
  return year - 1 + Math.min(1, Math.max(0, (atMs - beginsMs) / (endsMs - beginsMs)));
}
