import type { LocalXY } from '../geo/frame.ts';
import type { FeatureId, FeatureOf } from '../site/document.ts';

export type WindSeason = 'growing' | 'rest' | 'year';

/** What is asked of new belts. */
export interface BeltWish {
  readonly fieldId: FeatureId;
  /** The wind is to be cut by at least this share… */
  readonly cutShare: number;
  /** …over at least this share of the field… */
  readonly overShare: number;
  /** …this many years after the base year… */
  readonly year: number;
  /** …in the mean over this season. */
  readonly season: WindSeason;
}

/** A species as it would stand in a belt at the end of the wished year. */
export interface BeltPlant {
  /** Botanical name. */
  readonly species: string;
  readonly commonName: string;
  readonly heightM: number;
  readonly widthM: number;
  readonly porosityOn: number;
  readonly porosityOff: number;
  /** Grown to its full height, m: what buildings and drains are kept away by. */
  readonly matureHeightM: number;
  /** Roots that seek water far (the catalogue's caution). */
  readonly thirsty: boolean;
  /** Another species of like height and foliage to mix in; null: none in the catalogue. */
  readonly mixedWith: {
    readonly species: string;
    readonly commonName: string;
    readonly cautions: readonly string[];
  } | null;
  readonly cautions: readonly string[];
}

/** A place where a belt could stand: one unbroken line. */
export interface BeltPlace {
  readonly line: readonly LocalXY[];
  readonly lengthM: number;
  /** Grid azimuth towards which the side of the field faces, or from which the wind meets a belt across it, degrees. */
  readonly facingDeg: number;
  readonly where: 'edge' | 'across';
  /** The side of the field, or the line across it, that it is a part of; the same for every species. */
  readonly run: number;
  /** Where on that run it begins and ends, 0 to 1. */
  readonly from: number;
  readonly to: number;
}

/** One species at one place. */
export interface BeltOption {
  readonly place: BeltPlace;
  readonly plant: BeltPlant;
  readonly properties: FeatureOf<'belt'>['properties'];
}
