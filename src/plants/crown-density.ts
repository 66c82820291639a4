import { depthPerMetreFromDensity, leafAreaDensityForTransmittance } from '../crowns/transmission.ts';
import { type Foliage, foliageFactors, isMeasured } from './foliage-range.ts';
import type { BeltHabit, Species } from './species.ts';

/** What the engines need of a species' foliage. */
export interface CrownDensity {
  /** Leaf-area density in full leaf, m2 of leaf in a m3 of crown. */
  readonly leafAreaDensityM2M3: number;
  /** Optical depth leafless divided by that in full leaf. */
  readonly leafOffRatio: number;
}

/** Leafless against in leaf where nothing is known of the species (site file, "Leaves"). */
export const DEFAULT_LEAF_OFF_RATIO = 0.35;
/** A belt in leaf of which nothing is known (site file, "Leaves"). */
const DEFAULT_BELT_POROSITY = 0.4;
/** Common practice, no source. */
const DEFAULT_BELT_WIDTH_M = 3;

const densities: Readonly<Record<Foliage, WeakMap<Species, CrownDensity>>> = {
  dense: new WeakMap(),
  usual: new WeakMap(),
  open: new WeakMap(),
};

/**
 * Density at which a full-grown crown in the open, seen at 45 degrees, lets through the share of light the catalogue
 * gives, or the share at an end of its published range (see foliage-range.ts). Solved on first use, then kept.
 */
export function crownDensity(species: Species, foliage: Foliage = 'usual'): CrownDensity {
  const known = densities[foliage].get(species);
  if (known) return known;
  const { matureHeightM, matureSpreadM } = species.spread;
  const solve = (share: number): number =>
    leafAreaDensityForTransmittance(
      species.crownForm,
      matureHeightM,
      matureHeightM * species.clearStemShare,
      matureSpreadM / 2,
      share,
    );
  const factors = foliageFactors(foliage, isMeasured(species), species.leafClass === 'evergreen');
  // A factor on the optical depth is a power of the transmittance.
  const leafOn = species.transmittance.leafOn ** factors.leafOn;
  const leafOff = species.transmittance.leafOff ** factors.leafOff;
  const inLeaf = solve(leafOn);
  const leafless = leafOff === leafOn ? inLeaf : solve(leafOff);
  const density = {
    leafAreaDensityM2M3: inLeaf,
    leafOffRatio: depthPerMetreFromDensity(leafless) / depthPerMetreFromDensity(inLeaf),
  };
  densities[foliage].set(species, density);
  return density;
}

/** How a belt of the species stands where the file says nothing else; null: species not known. */
export function beltHabitOf(species: Species | null): BeltHabit {
  if (species?.belt) return species.belt;
  const ratio = species ? crownDensity(species).leafOffRatio : DEFAULT_LEAF_OFF_RATIO;
  return {
    opticalPorosityLeafOn: DEFAULT_BELT_POROSITY,
    // Optical depths scale by the ratio, so porosity is raised to it.
    opticalPorosityLeafOff: DEFAULT_BELT_POROSITY ** ratio,
    widthM: DEFAULT_BELT_WIDTH_M,
    source: 'the site file’s defaults',
  };
}
