import { choosingDefaults } from '../site/records/choosing.ts';
import type { SiteRecord } from '../site/records/site.ts';
import { LIGHT_BAND_LIMITS } from '../units/bands.ts';
import type { EdgeNeeds } from './edge-types.ts';

/** Among the limits of the light bands: where half shade and fruiting light begin. */
const HALF_SHADE = 0;
const FRUITING = 2;

/** What plants ask for on a site: what its person has said is enough, else its bands of light and the usual cut. */
export function edgeNeeds({ lightBands, choosing }: Pick<SiteRecord, 'lightBands' | 'choosing'>): EdgeNeeds {
  const limits = lightBands ?? LIGHT_BAND_LIMITS;
  const enough = choosing?.enough;
  const sunLight = enough?.light ?? limits[FRUITING];
  return {
    sunLight,
    shadeLight: Math.min(sunLight, limits[HALF_SHADE]),
    windCut: enough?.windCut ?? choosingDefaults.enough.windCut,
  };
}
