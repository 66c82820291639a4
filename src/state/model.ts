import type { Frame, LonLat } from '../geo/frame.ts';
import type { LightResult } from '../light/light-types.ts';
import type { Grid } from '../numeric/grid.ts';
import type { GrownPlan } from '../scene/grown-plan.ts';
import type { FeatureId, Kind, SiteDocument } from '../site/document.ts';
import type { ShelterResult } from '../wind/shelter-types.ts';

export type StepId = 'ground' | 'shelter' | 'trees' | 'light';
/** What the map is inked with. */
export type Picture = 'plain' | 'light-share' | 'sun-hours' | 'daily-light' | 'wind-cut' | 'slope';
/** The growing season, the whole year, or one month (0 = January). For wind a month means its season. */
export type Period = 'season' | 'year' | number;
export type Pace = 'slow' | 'usual' | 'fast';
export type Layer = 'ground' | 'shrub';
export type UnitSystem = 'metric' | 'imperial';

/** What the hand is doing on the map. */
export type Hand =
  | { readonly doing: 'looking' }
  | {
      readonly doing: 'drawing';
      readonly kind: Kind | 'row';
      readonly geometry: 'Point' | 'LineString' | 'Polygon';
    }
  | { readonly doing: 'moving'; readonly id: FeatureId }
  | { readonly doing: 'reshaping'; readonly id: FeatureId }
  /** The next points clicked go to whoever asked (photo corners, a place, a read spot). */
  | { readonly doing: 'pointing'; readonly purpose: string; readonly pointsWanted: number };

/** One computed map: the last good result stays while the next is computed. */
export interface Computation<Result> {
  readonly status: 'idle' | 'computing' | 'ready' | 'failed' | 'cancelled';
  /** 0 to 1. */
  readonly progress: number;
  readonly result: Result | null;
  /** True while `result` belongs to an earlier document, year or setting. */
  readonly stale: boolean;
  readonly message: string | null;
}

/** Light of one patch over the years. */
export interface PatchOutlook {
  readonly id: FeatureId;
  readonly name: string;
  readonly shareToKeep: number;
  /** In the chosen year: mean share of open light, share of its area with enough, and whether that is enough. */
  readonly meanLightShare: number;
  readonly areaShareWithEnoughLight: number;
  readonly enoughLight: boolean;
  /** First year after planting in which it is too dark and stays so to year 40; null: never. */
  readonly darkFromYear: number | null;
  /** meanLightShare at YEARS_LOOKED_AT. */
  readonly lightShareByYear: readonly number[];
}
export interface ThingCost {
  readonly id: FeatureId;
  readonly label: string;
  /** Hours of direct sun a day the patches would get back without it, growing season. */
  readonly sunHoursADay: number;
  readonly lightShare: number;
}

export interface Message {
  readonly tone: 'plain' | 'warning';
  readonly text: string;
}

/** What the screen shows of the site; the actions are in `Actions`. */
export interface AppState {
  // the document
  readonly document: SiteDocument;
  readonly undoLabel: string | null;
  readonly redoLabel: string | null;
  /** Milliseconds of the last save on this device; null: not saved yet. */
  readonly savedAtMs: number | null;
  /** Names of files the site refers to that are not on this device. */
  readonly missingFiles: readonly string[];
  // derived from it
  readonly frame: Frame;
  readonly ground: Grid | null;
  readonly groundDescription: string;
  readonly grown: GrownPlan;
  // the view
  readonly step: StepId;
  readonly picture: Picture;
  readonly year: number;
  readonly period: Period;
  readonly layer: Layer;
  readonly pace: Pace;
  readonly layout: string | null;
  readonly unitSystem: UnitSystem;
  readonly selection: FeatureId | null;
  readonly hand: Hand;
  /** Where the pointer or the keyboard cross is; null: off the map. */
  readonly pointer: LonLat | null;
  readonly message: Message | null;
  // the answers
  readonly light: Computation<LightResult>;
  readonly shelter: Computation<ShelterResult>;
  readonly outlook: Computation<readonly PatchOutlook[]>;
  readonly costs: Computation<readonly ThingCost[]>;
}

export interface Actions {
  /** One edit, one undo step. `change` must be pure. */
  edit(label: string, change: (document: SiteDocument) => SiteDocument): void;
  /** A gesture: any number of `preview` calls, then `commit` (one undo step) or `abandon`. */
  preview(change: (document: SiteDocument) => SiteDocument): void;
  commitGesture(label: string): void;
  abandonGesture(): void;
  undo(): void;
  redo(): void;
  select(id: FeatureId | null): void;
  takeHand(hand: Hand): void;
  /** A point was given while `hand.doing === 'pointing'`. */
  pointGiven(lonLat: LonLat): void;
  setPointer(lonLat: LonLat | null): void;
  show(
    view: Partial<
      Pick<AppState, 'step' | 'picture' | 'year' | 'period' | 'layer' | 'pace' | 'layout' | 'unitSystem'>
    >,
  ): void;
  say(message: Message | null): void;
  cancelComputation(): void;
  newSite(placeLonLat: LonLat, name: string): Promise<void>;
  openDemo(which: 'sorrel-bank' | 'kestrel-flat'): Promise<void>;
  /** A site file, a boundary or track to import, a terrain or photo raster, a picture, a weather file: whatever was dropped. */
  openFiles(files: readonly File[]): Promise<void>;
  saveFile(): void;
}
