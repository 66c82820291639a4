import type { SiteRecord } from '../site/records/site.ts';
import { LIGHT_BAND_LIMITS } from '../units/bands.ts';
import type { EdgeNeeds } from './edge-types.ts';

/** Shelter is enough from this cut of the growing season's wind on. Common practice, no source. */
const WIND_CUT = 0.3;
/** Among the limits of the light bands: where half shade and fruiting light begin. */
const HALF_SHADE = 0;
const FRUITING = 2;

/** What plants ask for on a site: its own bands of light, or the usual ones. */
export function edgeNeeds({ lightBands }: Pick<SiteRecord, 'lightBands'>): EdgeNeeds {
  const limits = lightBands ?? LIGHT_BAND_LIMITS;
  return { sunLight: limits[FRUITING], shadeLight: limits[HALF_SHADE], windCut: WIND_CUT };
}
