import { horizonSumDeg } from '../geo/exposure.ts';
import { type LonLat, toLocal } from '../geo/frame.ts';
import { cellAt, cellCount, sampleGrid } from '../numeric/grid.ts';
import { REGISTRY } from '../site/records/registry.ts';
import { bandOf, COLD_AIR_BANDS, SUN_HOUR_BANDS } from '../units/bands.ts';
import { areasAt } from './feature-at.ts';
import { followedYear } from './followed-year.ts';
import { formatHours, formatLength, formatShare } from './format-measure.ts';
import { fallInWords } from './format-words.ts';
import { lightBandsOf } from './light-bands.ts';
import { lightOfPeriod } from './light-period.ts';
import type { AppState } from './model.ts';
import { slopeOf } from './picture-raster.ts';
import { dayInWords, isSunTime, monthOfSun, sunOfCell } from './sun-times.ts';
import { windBand } from './wind-band.ts';

export interface ReadOut {
  readonly title: string;
  readonly rows: readonly { readonly label: string; readonly value: string }[];
}

const SUN_HOUR_LABEL = SUN_HOUR_BANDS.quantity.split(',')[0];

/**
 * What is known of a place: patch or field, light, sun, shelter, ground, for the chosen year and period. Values are
 * those of the computed cell, not smoothed. Null where nothing is known.
 */
export function readOutAt(state: AppState, lonLat: LonLat): ReadOut | null {
  const [xM, yM] = toLocal(state.frame, lonLat);
  const rows = [
    ...lightRows(state, xM, yM),
    ...sunTimeRows(state, xM, yM),
    ...windRows(state, xM, yM),
    ...coldRows(state, xM, yM),
    ...groundRows(state, xM, yM),
  ];
  const title = placeName(state, lonLat);
  return rows.length === 0 && title === null ? null : { title: title ?? 'Outside the fields', rows };
}

function placeName(state: AppState, lonLat: LonLat): string | null {
  for (const kind of ['building', 'patch', 'block', 'field'] as const) {
    const found = areasAt(state.document, kind, state.layout, lonLat).at(-1);
    if (!found) continue;
    const word = REGISTRY[kind].label;
    const name = found.properties.name;
    const said = word[0].toUpperCase() + word.slice(1);
    return name ? `${said} “${name}”` : said;
  }
  return null;
}

function lightRows(state: AppState, xM: number, yM: number): ReadOut['rows'][number][] {
  const { result } = state.light;
  if (!result || state.light.stale) {
    const rows = followedLightRows(state, xM, yM);
    if (rows) return rows;
  }
  if (!result) return [];
  const cell = cellAt(result.grid, xM, yM);
  if (cell < 0) return [];
  const calendarYear = state.document.site.baseYear + state.year;
  const value = (quantity: 'light-share' | 'sun-hours' | 'daily-light') =>
    lightOfPeriod(result, quantity, state.period, calendarYear)[cell];
  const share = value('light-share');
  if (Number.isNaN(share)) return [];
  const hours = value('sun-hours');
  const earlier = state.light.stale ? ' (earlier)' : '';
  return [
    { label: 'Light', value: `${lightInWords(state, share)}${earlier}` },
    { label: SUN_HOUR_LABEL, value: `${formatHours(hours)} a day` },
    { label: 'Daily light', value: `${value('daily-light').toFixed(1)} mol/m² a day` },
  ];
}

const lightInWords = ({ document }: AppState, share: number): string => {
  const bands = lightBandsOf(document.site);
  return `${formatShare(share)} · ${bands.bands[bandOf(bands, share)].name}`;
};

/** What the map says while it follows the years, and no more; null where they do not hold it. */
function followedLightRows(state: AppState, xM: number, yM: number): ReadOut['rows'][number][] | null {
  const followed = followedYear(state);
  if (!followed?.lightShare && !followed?.sunHours) return null;
  const cell = cellAt(followed.grid, xM, yM);
  const share = followed.lightShare?.[cell] ?? Number.NaN;
  const hours = followed.sunHours?.[cell] ?? Number.NaN;
  return [
    ...(Number.isNaN(share) ? [] : [{ label: 'Light', value: lightInWords(state, share) }]),
    ...(Number.isNaN(hours) ? [] : [{ label: SUN_HOUR_LABEL, value: `${formatHours(hours)} a day` }]),
  ];
}

/** While its map is shown: the day's first and last sun, and the hours of it. */
function sunTimeRows(state: AppState, xM: number, yM: number): ReadOut['rows'][number][] {
  const { result, stale } = state.sunTimes;
  if (!isSunTime(state.picture) || !result) return [];
  const cell = cellAt(result.grid, xM, yM);
  const month = monthOfSun(state);
  const sun = cell < 0 ? null : sunOfCell(result, month, cell, state.document.site.timeZone);
  return sun === null
    ? []
    : [{ label: `Sun, ${dayInWords(result, month)}`, value: stale ? `${sun} (earlier)` : sun }];
}

function windRows(state: AppState, xM: number, yM: number): ReadOut['rows'][number][] {
  const cut = windCutAt(state, xM, yM);
  if (Number.isNaN(cut)) return [];
  const percent = Math.round(cut * 100);
  if (percent < 0) return [{ label: 'Wind', value: `stronger by ${-percent} %` }];
  return [{ label: 'Wind', value: percent === 0 ? 'open' : `cut by ${percent} %` }];
}

/** As the map shows it; NaN where nothing is known. */
function windCutAt(state: AppState, xM: number, yM: number): number {
  const { result, stale } = state.shelter;
  const followed = !result || stale ? followedYear(state) : null;
  if (followed?.windCut) return followed.windCut[cellAt(followed.grid, xM, yM)] ?? Number.NaN;
  const cell = result ? cellAt(result.grid, xM, yM) : -1;
  if (!result || cell < 0) return Number.NaN;
  return 1 - result.windShare[windBand(state) * cellCount(result.grid) + cell];
}

/** While its map is shown: how deep cold air would lie, and what of that is held back by what stands. */
function coldRows(state: AppState, xM: number, yM: number): ReadOut['rows'][number][] {
  const { result, stale } = state.coldAir;
  if (state.picture !== 'cold-air' || !result) return [];
  const cell = cellAt(result.grid, xM, yM);
  const depthM = cell < 0 ? Number.NaN : result.dammedDepthM[cell];
  if (Number.isNaN(depthM)) return [];
  const name = COLD_AIR_BANDS.bands[bandOf(COLD_AIR_BANDS, depthM)].name;
  const earlier = stale ? ' (earlier)' : '';
  if (depthM < COLD_AIR_BANDS.bands[1].from) return [{ label: 'Cold air', value: `runs off${earlier}` }];
  const landM = result.depthM[cell];
  const held = depthM - landM > 0.1 ? `, ${formatLength(landM, state.unitSystem)} by the land alone` : '';
  return [
    { label: 'Cold air', value: `${name}, up to ${formatLength(depthM, state.unitSystem)}${held}${earlier}` },
  ];
}

function groundRows(state: AppState, xM: number, yM: number): ReadOut['rows'][number][] {
  const { ground } = state;
  if (!ground) return [];
  const elevationM = sampleGrid(ground, xM, yM);
  if (Number.isNaN(elevationM)) return [];
  const { slopeDeg, aspectDeg } = slopeOf(ground, state.frame.convergenceRad);
  const cell = cellAt(ground, xM, yM);
  const fall = cell < 0 ? '' : fallInWords(slopeDeg[cell], aspectDeg[cell]);
  const level = formatLength(elevationM, state.unitSystem);
  const own = { label: 'Ground', value: fall && fall !== 'not known' ? `${level}, ${fall}` : level };
  if (state.picture !== 'wind-cut') return [own];
  const horizonDeg = Math.round(horizonSumDeg(ground, xM, yM, state.frame.convergenceRad));
  // The land's own shelter: the sum of the horizon in eight directions.
  return horizonDeg === 0 ? [own] : [own, { label: 'Horizon, 8 directions', value: `${horizonDeg}° in all` }];
}
