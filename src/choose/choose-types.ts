import type { GridSpec } from '../numeric/grid.ts';
import type { FeatureId } from '../site/document.ts';
import { CHOOSING_YEARS } from '../site/records/choosing.ts';

/** `stands`: with nothing of what is planned; a year after the base year: with planned belts, woods and nets. */
export type FieldStateKey = 'stands' | (typeof CHOOSING_YEARS)[number];
export const FIELD_STATES: readonly FieldStateKey[] = ['stands', ...CHOOSING_YEARS];

/** Light and shelter of a field in one state. Shares 0 to 1, of the cells that have a value. */
export interface StateFigures {
  /** By how much the wind is cut, mean. */
  readonly windCutGrowing: number;
  readonly windCutRest: number;
  /** Hours a year with a gale, mean. */
  readonly galeHours: number;
  /** Of direct sun in the growing season, and in the month of the shortest day, mean. */
  readonly sunHoursGrowing: number;
  readonly sunHoursMidwinter: number;
  /** Share of open light, mean. */
  readonly lightGrowing: number;
  readonly lightMidwinter: number;
  /** Ground with enough light, with enough shelter, and with both. */
  readonly lightEnoughShare: number;
  readonly shelterEnoughShare: number;
  readonly bothShare: number;
}

/** Above which light, and from which cut of the growing season's wind on, ground has enough. Shares 0 to 1. */
export interface Enough {
  readonly light: number;
  readonly windCut: number;
}

/** What is cell by cell of one state: light of the growing season, and wind as `ShelterResult` has it, first band. */
export interface StateMaps {
  readonly lightShare: Float32Array;
  readonly windShare: Float32Array;
}

/** How the ground of a field lies. */
export interface GroundFigures {
  /** Geodesic. */
  readonly areaM2: number;
  /** Mean, and the mean way the ground falls (true); null where falls cancel out. */
  readonly slopeDeg: number;
  readonly aspectDeg: number | null;
  /** Sum of horizon angles in eight directions, mean; null without ground. */
  readonly horizonSumDeg: number | null;
  /** Topographic wetness index, mean. */
  readonly wetness: number;
  readonly cold: ColdFigures;
  /** Straight lines from the field's edge to the nearest path and water drawn; null: none is. */
  readonly toAccessM: number | null;
  readonly toWaterM: number | null;
}

/** Cold air on a still night. */
export interface ColdFigures {
  /** Depth that the land alone would hold before it spills over, mean over the field, m. */
  readonly meanDepthM: number;
  /** The same with what belts, woods, walls and buildings hold back; and the deepest place then. */
  readonly heldDepthM: number;
  readonly deepestM: number;
  /** Share of the field that lies in a hollow of the land deeper than 0.3 m. */
  readonly hollowShare: number;
  /** The same with what belts, woods, walls and buildings hold back. */
  readonly dammedShare: number;
  /** Ground outside whose cold air comes through the field, m2. */
  readonly drainsThroughM2: number;
}

/** An edge that is not the person's to keep, and the field without it, as it stands otherwise. */
export interface WithoutEdge {
  readonly id: FeatureId;
  /** What the file or the species calls it. */
  readonly label: string;
  readonly owner: string;
  readonly figures: StateFigures;
}

/** The field without all the edges that are one owner's, as it stands otherwise. */
export interface WithoutOwner {
  readonly owner: string;
  /** What they are in words: "Norway spruce belts". */
  readonly noun: string;
  readonly ids: readonly FeatureId[];
  readonly figures: StateFigures;
}

/**
 * First year after the base year in which half of the field is in shelter with planned belts, at slow, usual and fast
 * growth; nets that are taken away again do not count. Null: not within forty.
 */
export interface ShelteredFrom {
  readonly slow: number | null;
  readonly usual: number | null;
  readonly fast: number | null;
}

/** The figures of one field. */
export interface FieldFigures {
  readonly ground: GroundFigures;
  readonly states: ReadonlyMap<FieldStateKey, StateFigures>;
  readonly withoutEdges: readonly WithoutEdge[];
  /** One for each owner, whether of one edge or of several. */
  readonly withoutOwners: readonly WithoutOwner[];
  readonly shelteredFrom: ShelteredFrom;
  /** Length of new belt that would shelter what nothing shelters, m; 0: none is needed. */
  readonly beltNeededM: number;
}

/** All that is known of one field. */
export interface FieldFound extends FieldFigures {
  readonly id: FeatureId;
  readonly name: string;
  readonly grid: GridSpec;
  /** 1 for the cells of the field. */
  readonly mask: Uint8Array;
  readonly maps: ReadonlyMap<FieldStateKey, StateMaps>;
}
