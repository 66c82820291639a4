import { timeZoneAt } from '../time-zone.ts';
import type { Migration } from './migration.ts';

/**
 * Version 0 is a collection with a `site` record written by hand or by a script before the format had a number:
 * name, time zone and base year could be left out. They are filled in from the file's name, from the first coordinates
 * and from the earliest year the features speak of.
 */
export const nameTheVersion: Migration = {
  from: 0,
  to: 1,
  note: 'The file has no format version: what its site record lacked (name, time zone, base year) was filled in.',
  migrate: (raw, fileName) => ({
    ...raw,
    site: {
      name: fileName.replace(/^.*[/\\]/, '').replace(/(\.site)?\.(geo)?json$/i, '') || 'Site',
      timeZone: timeZoneOfFirst(raw.features, raw.site.placeLonLat),
      baseYear: firstYear(raw.features),
      ...raw.site,
      formatVersion: 1,
    },
  }),
};

/** UTC where there is no place to look up: a file without coordinates has no seasons to cut. */
function timeZoneOfFirst(features: readonly unknown[], placeLonLat: unknown): string {
  for (const feature of [{ geometry: { coordinates: placeLonLat } }, ...features]) {
    let inner = (feature as { geometry?: { coordinates?: unknown } } | null)?.geometry?.coordinates;
    while (Array.isArray(inner) && Array.isArray(inner[0])) inner = inner[0];
    if (!Array.isArray(inner)) continue;
    const [lon, lat] = inner;
    if (Math.abs(lon) <= 180 && Math.abs(lat) <= 90) return timeZoneAt([lon, lat]);
  }
  return 'UTC';
}

/** The earliest year in which something is planted or measured. */
function firstYear(features: readonly unknown[]): number {
  let first = Number.POSITIVE_INFINITY;
  for (const feature of features) {
    const p = (feature as { properties?: Record<string, unknown> | null } | null)?.properties;
    for (const year of [p?.plantedYear, p?.measuredYear])
      if (typeof year === 'number' && Number.isInteger(year)) first = Math.min(first, year);
  }
  return Number.isFinite(first) ? first : DEFAULT_BASE_YEAR;
}

/** The year of the first format: a fixed one, so that the same file gives the same site every time. */
const DEFAULT_BASE_YEAR = 2027;
