import { ALDERS } from './alders.ts';
import { CYPRESSES_AND_YEW } from './cypresses-and-yew.ts';
import { HEDGE_TREES } from './hedge-trees.ts';
import { MAPLES_AND_BIRCHES } from './maples-and-birches.ts';
import { NITROGEN_FIXERS } from './nitrogen-fixers.ts';
import { NUT_TREES } from './nut-trees.ts';
import { ORCHARD_TREES } from './orchard-trees.ts';
import { POPLARS_AND_WILLOWS } from './poplars-and-willows.ts';
import { SHRUBS } from './shrubs.ts';
import { SMALL_FRUIT_TREES } from './small-fruit-trees.ts';
import type { Species } from './species.ts';
import { SPRUCES_AND_PINES } from './spruces-and-pines.ts';
import { TIMBER_TREES } from './timber-trees.ts';
import { WARMTH_LOVERS } from './warmth-lovers.ts';

/** Every tree and shrub that comes with the app, by botanical name. Sizes are for a usual site in the open. */
export const CATALOGUE: readonly Species[] = [
  ...ALDERS,
  ...CYPRESSES_AND_YEW,
  ...HEDGE_TREES,
  ...MAPLES_AND_BIRCHES,
  ...NITROGEN_FIXERS,
  ...NUT_TREES,
  ...ORCHARD_TREES,
  ...POPLARS_AND_WILLOWS,
  ...SHRUBS,
  ...SMALL_FRUIT_TREES,
  ...SPRUCES_AND_PINES,
  ...TIMBER_TREES,
  ...WARMTH_LOVERS,
].sort((a, b) => (a.botanicalName < b.botanicalName ? -1 : 1));
