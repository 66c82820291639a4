import type { Frame, LonLat } from '../geo/frame.ts';
import type { Grid } from '../numeric/grid.ts';
import type { BandSet } from '../units/bands.ts';
import type { Orientation, PaperSize } from './paper.ts';

export type LengthUnit = 'm' | 'ft';
export type Ring = readonly LonLat[];

/** Something with an outline on the ground. Rings may be closed or not. */
export interface OutlinedThing {
  readonly label: string;
  readonly rings: readonly Ring[];
  /** Not there yet today. */
  readonly planned?: boolean;
}
export interface LinedThing {
  readonly label: string;
  readonly line: readonly LonLat[];
}

/** One crown, now and in the plan's year; a size is null while the tree is not there. */
export interface PlanTree {
  readonly tag: string;
  /** What it is called in the list: botanical name and variety. */
  readonly name: string;
  readonly lonLat: LonLat;
  /** How its outline is drawn. */
  readonly role: 'nut' | 'fruit' | 'nurse' | 'other';
  readonly planned: boolean;
  readonly now: { readonly heightM: number; readonly spreadM: number } | null;
  readonly inYear: { readonly heightM: number; readonly spreadM: number } | null;
}

/** A quantity over the ground, to be inked in bands. */
export interface BandMap {
  readonly grid: Grid;
  readonly bands: BandSet;
  /** What period and reading height it is of: "growing season, 0.1 m above the ground". */
  readonly detail: string;
  /** Values at which a heavier line is drawn: what stands along it, and what the legend calls it. */
  readonly lines: readonly { readonly value: number; readonly label: string; readonly words: string }[];
  /** What it is drawn with in place of what is expected; null: nothing. */
  readonly supposed: string | null;
  /** What would change it most, in sentences; null where that is not known. */
  readonly whatWouldChange: string | null;
}

/** All that one plan shows: plain data, no engine and no document. */
export interface PlanPageInput {
  readonly paper: PaperSize;
  readonly orientation: Orientation;
  /** 1 : N, or as large as the ground fits. */
  readonly scale: number | 'fit';
  /** True azimuth that points to the top of the page; default 0, true north. */
  readonly upAzimuthDeg?: number;
  readonly unit: LengthUnit;
  /** `ink` leaves out the tints and keeps the hatching. */
  readonly inking: 'tints' | 'ink';
  readonly siteName: string;
  readonly layoutName: string | null;
  /** As it is to be printed. */
  readonly date: string;
  /** Years after planting, and the calendar year of that season. */
  readonly year: number;
  readonly calendarYear: number;
  readonly frame: Frame;
  /** Compass declination where it is known, east positive. */
  readonly declinationDeg: number | null;
  /** What must be on the page; default: the fields, or everything where there are none. */
  readonly extent?: Ring;
  readonly fields: readonly OutlinedThing[];
  readonly belts: readonly OutlinedThing[];
  readonly blocks: readonly OutlinedThing[];
  readonly buildings: readonly OutlinedThing[];
  readonly walls: readonly OutlinedThing[];
  readonly patches: readonly OutlinedThing[];
  readonly paths: readonly LinedThing[];
  readonly keepOuts: readonly LinedThing[];
  readonly trees: readonly PlanTree[];
  /** Elevations, for contours. */
  readonly ground: Grid | null;
  readonly bandMap: BandMap | null;
  readonly cautions: readonly string[];
}
