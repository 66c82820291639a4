import type { LonLat } from '../geo/frame.ts';
import type { SiteDocument } from './document.ts';
import { CURRENT_FORMAT_VERSION } from './records/site.ts';
import { timeZoneAt } from './time-zone.ts';
import { validateSiteRecord } from './validate-document.ts';

/**
 * A site with nothing on it but its place. The plan starts in the year after `nowYear`: what is drawn this year is
 * planted in the coming winter.
 * @throws BadInputError for a place that is not on the globe.
 */
export function newSite(placeLonLat: LonLat, name: string, nowYear: number): SiteDocument {
  const site = {
    formatVersion: CURRENT_FORMAT_VERSION,
    name: name.trim() || 'New site',
    timeZone: 'UTC',
    baseYear: nowYear + 1,
    placeLonLat: [placeLonLat[0], placeLonLat[1]] as [number, number],
  } as const;
  validateSiteRecord(site);
  return { type: 'FeatureCollection', site: { ...site, timeZone: timeZoneAt(placeLonLat) }, features: [] };
}
