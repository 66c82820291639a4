import type { CrownForm } from '../crowns/crown-set.ts';
import type { HeightCurve } from '../growth/height-curve.ts';
import type { LeafClass } from '../growth/leaf-calendar.ts';
import { TEMPERATE_BROADLEAVES, TEMPERATE_CONIFERS } from '../growth/stem-allometry.ts';
import { curveOfRate, type GrowthRate } from './growth-rates.ts';
import { COMMON_PRACTICE } from './sources.ts';
import type { BeltHabit, LightNeed, RoleLetter, Rootstock, Species } from './species.ts';

/** What the catalogue's files write down of a species; the rest follows. Lengths in metres. */
export interface SpeciesDescription {
  readonly role: RoleLetter;
  readonly form: CrownForm;
  readonly heightM: number;
  /** Absent: common practice. */
  readonly heightSource?: string;
  readonly growth: GrowthRate | { readonly curve: HeightCurve; readonly source: string };
  readonly spreadM: number;
  readonly clearStem: number;
  readonly leaf: LeafClass;
  /** In leaf and leafless; a third member names a source other than common practice. */
  readonly through: readonly [leafOn: number, leafOff: number, source?: string];
  readonly light: LightNeed;
  /** Porosity in leaf and leafless, width; absent where nobody plants a belt of it. */
  readonly belt?: readonly [porosityOn: number, porosityOff: number, widthM: number];
  readonly conifer?: boolean;
  readonly fixesNitrogen?: boolean;
  /** Absent: broadleaves do, conifers do not. */
  readonly shootsAgain?: boolean;
  readonly bearsAfterYears?: number;
  readonly rootstocks?: readonly Rootstock[];
  readonly synonyms?: readonly string[];
  readonly cautions?: readonly string[];
}

const beltHabit = ([on, off, widthM]: readonly [number, number, number]): BeltHabit => ({
  opticalPorosityLeafOn: on,
  opticalPorosityLeafOff: off,
  widthM,
  source: COMMON_PRACTICE,
});

export function describeSpecies(
  botanicalName: string,
  commonName: string,
  described: SpeciesDescription,
): Species {
  const { growth, heightM } = described;
  const [leafOn, leafOff, throughSource] = described.through;
  return {
    botanicalName,
    commonName,
    synonyms: described.synonyms ?? [],
    role: described.role,
    crownForm: described.form,
    curve: typeof growth === 'string' ? curveOfRate(growth, heightM) : growth.curve,
    heightSource: described.heightSource ?? COMMON_PRACTICE,
    curveSource: typeof growth === 'string' ? COMMON_PRACTICE : growth.source,
    spread: {
      matureHeightM: heightM,
      matureSpreadM: described.spreadM,
      group: described.conifer ? TEMPERATE_CONIFERS : TEMPERATE_BROADLEAVES,
    },
    vigour: 1,
    clearStemShare: described.clearStem,
    leafClass: described.leaf,
    transmittance: { leafOn, leafOff, source: throughSource ?? COMMON_PRACTICE },
    belt: described.belt ? beltHabit(described.belt) : null,
    rootstocks: described.rootstocks ?? [],
    yearsToBear: described.bearsAfterYears ?? null,
    lightNeed: described.light,
    fixesNitrogen: described.fixesNitrogen ?? false,
    shootsAgain: described.shootsAgain ?? !described.conifer,
    cautions: described.cautions ?? [],
  };
}
