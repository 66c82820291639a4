import type { FeatureId, FeatureOf } from '../site/document.ts';

/** What a field can lie beside. */
export type EdgeFeature = FeatureOf<'belt' | 'block' | 'wall'>;

/** Years after the base year in which it is looked at. */
export const EDGE_YEARS = [0, 20] as const;

/** What plants ask for: shares of open light of the growing season, and of the wind that is taken away, 0 to 1. */
export interface EdgeNeeds {
  readonly sunLight: number;
  readonly shadeLight: number;
  readonly windCut: number;
}

/** Ground at one distance from the edge, growing season. */
export interface EdgeBin {
  /** From the edge's near side, m. */
  readonly fromM: number;
  readonly toM: number;
  /** Mean distance of its ground: cells do not fill it evenly. */
  readonly atM: number;
  readonly areaM2: number;
  /** Means: share of open light, and by how much the wind is cut. */
  readonly lightShare: number;
  readonly windCut: number;
  /** Share of this ground with light for sun lovers and enough shelter. */
  readonly bothShare: number;
}

/**
 * What ground is good for, by its light and shelter: sun lovers; shade-tolerant plants; light enough for sun lovers but too
 * little shelter; neither of the two; too dark for anything.
 */
export type EdgeUse = 'sun' | 'shade' | 'exposed' | 'neither' | 'dark';

/** Ground of one use, from one distance to another. */
export interface EdgeStretch {
  readonly use: EdgeUse;
  readonly fromM: number;
  readonly toM: number;
}

/** The distance at which light and shelter together are most for a use: their product. */
export interface EdgeBest {
  readonly atM: number;
  readonly lightShare: number;
  readonly windCut: number;
}

/** One side of an edge in one year. */
export interface EdgeYear {
  readonly year: number;
  /** Of the edge; null: it does not stand. */
  readonly heightM: number | null;
  readonly bins: readonly EdgeBin[];
  readonly stretches: readonly EdgeStretch[];
  readonly bestSun: EdgeBest | null;
  readonly bestShade: EdgeBest | null;
}

/** The field's ground on one side of an edge. */
export interface EdgeSide {
  /** The way from the edge, degrees clockwise from true north. */
  readonly facingDeg: number;
  readonly areaM2: number;
  /** As `EDGE_YEARS`. */
  readonly years: readonly EdgeYear[];
}

export interface EdgeProfile {
  readonly id: FeatureId;
  readonly label: string;
  readonly fieldId: FeatureId;
  readonly fieldName: string;
  readonly needs: EdgeNeeds;
  readonly cellM: number;
  /** The one with most ground first; empty: the field has none beside it. */
  readonly sides: readonly EdgeSide[];
}
