import { CONIFERS } from './conifers.ts';
import { NITROGEN_FIXERS } from './nitrogen-fixers.ts';
import { NUT_TREES } from './nut-trees.ts';
import { ORCHARD_TREES } from './orchard-trees.ts';
import { SHELTER_BROADLEAVES } from './shelter-broadleaves.ts';
import { SHRUBS } from './shrubs.ts';
import { SMALL_FRUIT_TREES } from './small-fruit-trees.ts';
import type { Species } from './species.ts';
import { TIMBER_TREES } from './timber-trees.ts';

/** Every tree and shrub that comes with the app, by botanical name. Sizes are for a usual site in the open. */
export const CATALOGUE: readonly Species[] = [
  ...NUT_TREES,
  ...ORCHARD_TREES,
  ...SMALL_FRUIT_TREES,
  ...NITROGEN_FIXERS,
  ...SHELTER_BROADLEAVES,
  ...CONIFERS,
  ...TIMBER_TREES,
  ...SHRUBS,
].sort((a, b) => (a.botanicalName < b.botanicalName ? -1 : 1));
