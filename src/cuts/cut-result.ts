import type { FeatureId } from '../site/document.ts';
import type { CutAim, CutOption, CutPlant, CutWish } from './cut-types.ts';

/** One cut of a way. */
export interface ProposedCut {
  /** On the map and in the list. */
  readonly letter: string;
  readonly plant: CutPlant;
  readonly option: CutOption;
}

/** Light of one patch over the seasons looked at. */
export interface PatchKept {
  readonly id: FeatureId;
  readonly name: string;
  readonly shareToKeep: number;
  readonly areaShareToKeep: number;
  /** Years after the base year in which it is too dark with nothing cut. */
  readonly darkIn: readonly number[];
  /** Least share of its area with enough light, of all seasons: as it stands and with the way's cuts. */
  readonly areaShare: { readonly without: number; readonly with: number };
}

/** Cuts of one winter that keep the light of all patches that can be kept. */
export interface CutWay {
  /** What it is best at. */
  readonly aims: readonly CutAim[];
  readonly cuts: readonly ProposedCut[];
  readonly cropYearsLost: number;
  /** Mean wind cut on the field in the first season, over the year: as it stands and with the cuts. */
  readonly windCut: { readonly without: number; readonly with: number };
  /** Those that get too dark with nothing cut. */
  readonly patches: readonly PatchKept[];
  /** Whether all other sets of as few works were looked at. */
  readonly proven: boolean;
}

/** A patch that stays too dark whatever is cut. */
export interface StaysDark {
  readonly id: FeatureId;
  readonly name: string;
  readonly areaShareToKeep: number;
  /** Least share of its area with enough light if all that may be cut were. */
  readonly mostAreaShare: number;
  /** What takes most of its light and is not the person's to cut; null: no single thing. */
  readonly because: { readonly label: string; readonly owner: string | null } | null;
}

export interface WinterCuts {
  readonly wish: CutWish;
  /** Calendar year of the first season, and the last one that is looked at. */
  readonly fromYear: number;
  readonly toYear: number;
  readonly fieldName: string;
  /** Patches that were looked at. */
  readonly patches: number;
  /** Names of those too dark in one of the seasons with nothing cut. */
  readonly dark: readonly string[];
  readonly ways: readonly CutWay[];
  readonly staysDark: readonly StaysDark[];
}
