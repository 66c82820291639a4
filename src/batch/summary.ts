import type { SceneEnd } from '../scene/ends.ts';
import type { FeatureId } from '../site/document.ts';
import type { LightFigures, ShelterFigures } from './area-figures.ts';
import type { EvaporationFigures } from './evaporation-figures.ts';
import type { WhatWouldChange } from './what-would-change.ts';

interface AreaHead {
  readonly id: FeatureId;
  readonly name: string;
  /** Geodesic. */
  readonly areaM2: number;
}
interface AreaGround {
  /** Sum of the angles to the horizon in eight directions, degrees: 0 open all round, more where the land shelters. */
  readonly horizonSumDeg: number | null;
}
export type FieldSummary = AreaHead &
  Partial<AreaGround> &
  Partial<LightFigures> &
  Partial<ShelterFigures> & {
    /** Null where the site has no weather file that tells it. */
    readonly evaporationSeason?: EvaporationFigures | null;
  };
export type PatchSummary = FieldSummary & {
  readonly enoughLight?: boolean;
  readonly areaShareWithEnoughLight?: number;
};

/** What a command says of its results; each command fills what it computes. */
export interface Summary {
  readonly site: string;
  /** Years after the site's base year. */
  readonly year: number;
  readonly layout: string | null;
  /** One thing at an end of what is not known of it; null: all as expected. */
  readonly end: SceneEnd | null;
  readonly cellM: number;
  readonly cells: number;
  readonly crs: string;
  /** What was taken because the site file does not say it. */
  readonly assumed: readonly string[];
  readonly directions: number;
  /** Stated error of the year's direct hours, share of open hours. */
  readonly quadratureError?: { readonly mean: number; readonly p99: number };
  readonly elapsedMs: number;
  readonly fields: readonly FieldSummary[];
  readonly patches: readonly PatchSummary[];
  readonly whatWouldChangeIt?: WhatWouldChange;
}

const DIGITS = 4;

/** The summary as JSON, its figures rounded to what they can carry: four decimals. */
export function summaryText(summary: Summary): string {
  const rounded = (_key: string, value: unknown) =>
    typeof value === 'number' && !Number.isInteger(value) ? Number(value.toFixed(DIGITS)) : value;
  return `${JSON.stringify(summary, rounded, 2)}\n`;
}
