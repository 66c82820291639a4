import type { Horizon } from '../jobs/run-view-from.ts';
import { gotSentence, HOURS_EXPLAINED, lostTable, periodWords } from '../sheets/horizon-hours.ts';
import type { HorizonPageInput, HorizonPeriod } from '../sheets/horizon-input.ts';
import { lengthWords } from '../sheets/horizon-scale.ts';
import { NEVER_LOOK, placeText } from '../sheets/horizon-texts.ts';
import { horizonInWords } from '../sheets/horizon-words.ts';

const PERIODS: readonly HorizonPeriod[] = ['month', 'season', 'year'];
const figure = (hours: number): number => Math.round(hours * 10) / 10;

/** The answer for a person: what reaches the spot, what takes how much, what is seen where. */
export function horizonText(page: HorizonPageInput, written: readonly string[]): string {
  const { takers, together } = lostTable(page, 'season');
  const lines = [
    `${page.siteName}, year ${page.year} (season of ${page.calendarYear})${
      page.layoutName ? `, layout ${page.layoutName}` : ''
    }: the horizon from ${placeText(page.lonLat)}, ${lengthWords(page.view.readingHeightM, page.unit)} above the ground`,
    ...page.findIt,
    ...PERIODS.map((period) => gotSentence(page, period)),
    `Hours of sun taken (${PERIODS.map((period) => periodWords(page, period)).join('; ')}):`,
    ...[...takers, together].map(
      ({ label, hours }) => `  ${label}: ${PERIODS.map((period) => Math.round(hours[period])).join('; ')}`,
    ),
    HOURS_EXPLAINED,
    ...horizonInWords(page),
    ...page.assumed.map((assumption) => `Assumed: ${assumption}`),
    NEVER_LOOK,
    ...(written.length > 0 ? [`Written: ${written.join(', ')}`] : []),
  ];
  return `${lines.join('\n')}\n`;
}

/** The same as data: hours by period, things in sight, the land every ten degrees, the sun at each full hour of its paths. */
export function horizonJson(page: HorizonPageInput, { view, things }: Horizon): string {
  const [lon, lat] = page.lonLat;
  const seen = new Map(view.outlines.map((outline) => [outline.thing, outline]));
  const byPeriod = (of: (period: HorizonPeriod) => number) =>
    Object.fromEntries(PERIODS.map((period) => [period, figure(of(period))]));
  const answer = {
    site: page.siteName,
    year: page.year,
    calendarYear: page.calendarYear,
    layout: page.layoutName,
    at: { lat, lon },
    groundM: figure(view.groundM),
    heightM: view.readingHeightM,
    month: view.month + 1,
    season: page.seasonWords,
    assumed: page.assumed,
    hours: {
      open: byPeriod((period) => page.hours[period].open),
      got: byPeriod((period) => page.hours[period].got),
      toLand: byPeriod((period) => page.hours[period].toLand),
      shared: byPeriod((period) => page.hours[period].shared),
    },
    things: things.flatMap(({ id, kind, label }, thing) => {
      const outline = seen.get(thing);
      const taken = byPeriod((period) => page.hours[period].toThings[thing]);
      if (!outline && taken.year === 0) return [];
      return [
        {
          id,
          kind,
          label,
          hoursTaken: taken,
          nearestM: outline ? figure(outline.nearestM) : null,
          topAzimuthDeg: outline ? figure(outline.topAzimuthDeg) : null,
          topAltitudeDeg: outline ? figure(outline.topAltitudeDeg) : null,
          letsThrough: outline ? Math.round(outline.letsThrough * 1000) / 1000 : null,
        },
      ];
    }),
    land: Array.from({ length: 36 }, (_, i) => ({
      azimuthDeg: i * 10,
      altitudeDeg: figure(view.landAltitudeDeg[Math.round((i * 10) / view.stepDeg)]),
    })),
    sun: view.sunPaths.map(({ which, month, dayOfMonth, clock, hours }) => ({
      which,
      month: month + 1,
      dayOfMonth,
      clock,
      hours: hours.map(({ clockHour, azimuthDeg, altitudeDeg }) => ({
        clockHour,
        azimuthDeg: Math.round(azimuthDeg * 100) / 100,
        altitudeDeg: Math.round(altitudeDeg * 100) / 100,
      })),
    })),
  };
  return `${JSON.stringify(answer, null, 2)}\n`;
}
