import type { CrownForm } from '../crowns/crown-set.ts';
import type { SpreadRule } from '../growth/crown-spread.ts';
import type { HeightCurve } from '../growth/height-curve.ts';
import type { LeafClass } from '../growth/leaf-calendar.ts';

/** What a woody plant is mainly there for; the letter starts the tags of its trees (N1, N2, ...). */
export const ROLES = {
  N: 'nut',
  F: 'fruit',
  A: 'nurse, feeds the ground',
  S: 'shelter',
  T: 'timber',
  U: 'shrub',
} as const;
export type RoleLetter = keyof typeof ROLES;

/** How much light it needs to do what it is planted for. Common practice, no source. */
export const LIGHT_NEEDS = ['open', 'light shade', 'half shade', 'deep shade'] as const;
export type LightNeed = (typeof LIGHT_NEEDS)[number];

export interface Rootstock {
  readonly name: string;
  /** Height and spread of the full-grown tree against one on its own or seedling roots. */
  readonly sizeFactor: number;
  readonly source: string;
}

/** Mean share of light that shows through the silhouette of a full-grown crown seen at 45 degrees, 0 to 1. */
interface CrownTransmittance {
  readonly leafOn: number;
  readonly leafOff: number;
  readonly source: string;
}

/** A belt of this species where the file says nothing else: porosity through its whole width, width in m. */
export interface BeltHabit {
  readonly opticalPorosityLeafOn: number;
  readonly opticalPorosityLeafOff: number;
  readonly widthM: number;
  readonly source: string;
}

/** A tree or shrub of the catalogue. Sizes are those of a full-grown plant in the open, metres. */
export interface Species {
  readonly botanicalName: string;
  readonly commonName: string;
  readonly synonyms: readonly string[];
  readonly role: RoleLetter;
  readonly crownForm: CrownForm;
  readonly curve: HeightCurve;
  /** Where `curve.maxHeightM` comes from, and where the pace of the curve comes from. */
  readonly heightSource: string;
  readonly curveSource: string;
  readonly spread: SpreadRule;
  /** How well it does on this site against other species there, by the site's own file; times the site's vigour. */
  readonly vigour: number;
  readonly clearStemShare: number;
  readonly leafClass: LeafClass;
  readonly transmittance: CrownTransmittance;
  readonly belt: BeltHabit | null;
  readonly rootstocks: readonly Rootstock[];
  /** Years from planting to a first worthwhile crop; null where none is expected. Common practice, no source. */
  readonly yearsToBear: number | null;
  readonly lightNeed: LightNeed;
  readonly fixesNitrogen: boolean;
  /** Grows again from stump or bare stem when its whole crown is taken. Common practice, no source. */
  readonly shootsAgain: boolean;
  readonly cautions: readonly string[];
}
