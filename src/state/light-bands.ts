import type { SiteRecord } from '../site/records/site.ts';
import { type BandSet, LIGHT_BANDS, lightBandsFrom } from '../units/bands.ts';

const made = new WeakMap<readonly number[], BandSet>();

/** The site's bands of light: its own limits, or the usual ones. The same object for the same limits. */
export function lightBandsOf({ lightBands }: Pick<SiteRecord, 'lightBands'>): BandSet {
  if (!lightBands) return LIGHT_BANDS;
  const known = made.get(lightBands) ?? lightBandsFrom(lightBands);
  made.set(lightBands, known);
  return known;
}
