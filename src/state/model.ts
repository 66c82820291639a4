import type { BridgeOffer } from '../belts/bridge.ts';
import type { Darkened } from '../belts/finding-types.ts';
import type { Insurance, InsuranceWish } from '../belts/insurance-belt.ts';
import type { BeltProposals } from '../belts/propose-result.ts';
import type { BeltWhen } from '../belts/years-to-protect.ts';
import type { ColdAir } from '../choose/cold-air.ts';
import type { EdgeProfile } from '../choose/edge-types.ts';
import type { WinterCuts } from '../cuts/cut-result.ts';
import type { Frame, LonLat } from '../geo/frame.ts';
import type { AtEnds } from '../jobs/run-ends.ts';
import type { FirstLastSun } from '../light/first-last-sun-types.ts';
import type { LightResult } from '../light/light-types.ts';
import type { Grid } from '../numeric/grid.ts';
import type { SceneEnd } from '../scene/ends.ts';
import type { GrownPlan } from '../scene/grown-plan.ts';
import type { Felled, GrowthSpeeds } from '../scene/options.ts';
import type { SiteProblem } from '../site/checks/problem.ts';
import type { FeatureId, Kind, SiteDocument } from '../site/document.ts';
import type { StakeWish } from '../stakes/stake-plan.ts';
import type { WeatherTable } from '../sun/weather/weather-table.ts';
import type { ShelterOptions, ShelterResult, WindClimate } from '../wind/shelter-types.ts';
import type { SpotWish } from '../windspots/spot-plan.ts';
import type { YearsLook } from '../years/years-look-types.ts';
import type { Cutting } from './cutting.ts';
import type { EarlierSite } from './earlier-sites.ts';
import type { FieldsCompared } from './fields-compared-found.ts';
import type { HorizonFound } from './horizon-found.ts';
import type { Comparing, LayoutPairFound } from './layout-pair-found.ts';
import type { Proposing } from './proposing.ts';
import type { SpotPlanFound, SpotScoreFound } from './spots-found.ts';
import type { WindFound } from './wind-found.ts';

export type StepId = 'ground' | 'shelter' | 'trees' | 'light';
/** What the map is inked with. */
export type Picture =
  | 'plain'
  | 'light-share'
  | 'sun-hours'
  | 'daily-light'
  | 'first-sun'
  | 'last-sun'
  | 'wind-cut'
  | 'slope'
  | 'cold-air';
/**
 * The growing season, the whole year, or one month (0 = January). For wind a month means its season; first and last sun
 * are of one month's day.
 */
export type Period = 'season' | 'year' | number;
export type Layer = 'ground' | 'shrub';
/**
 * Values at which a map of light is inked with a heavier line, rising: shares 0 to 1, hours a day, mol m-2 d-1. Null:
 * the light to keep where the map shows shares, otherwise none.
 */
export type InkedValues = Readonly<
  Record<'light-share' | 'sun-hours' | 'daily-light', readonly number[] | null>
>;
export type UnitSystem = 'metric' | 'imperial';
export type Theme = 'as-device' | 'light' | 'dark';
/** The one dialog that may be open over the map. */
export type DialogName =
  | 'new-site'
  | 'sides'
  | 'photo'
  | 'wind-words'
  | 'wind-drawn'
  | 'wind-table'
  | 'print-wind'
  | 'tree-height'
  | 'growth'
  | 'spot-levels'
  | 'print'
  | 'print-stakes'
  | 'print-wind-spots'
  | 'horizon'
  | 'print-horizon'
  | 'wind-here'
  | 'layouts'
  | 'choose-field'
  | 'print-choice'
  | 'two-layouts';

/** What the next drawn thing is made of; the panels set it, drawing reads it. */
export interface Brush {
  readonly treeSpecies: string | null;
  readonly treeRootstock: string | null;
  /** Between the trees of a row. */
  readonly rowSpacingM: number;
  readonly beltSpecies: string | null;
  readonly beltWidthM: number;
  readonly wallHeightM: number;
  readonly wallPorosity: number;
  readonly buildingHeightM: number;
  readonly status: 'existing' | 'planned';
}

/** Points a person gave on the map for whoever asked, oldest first. */
export interface Pointed {
  readonly purpose: string;
  readonly points: readonly LonLat[];
  readonly complete: boolean;
}

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

/** The shadow stakes that are open: whose, and what is asked of them. */
export interface StakesView extends StakeWish {
  readonly of: FeatureId;
}

/** The wind spots that are open: behind what, and what is asked of them. */
export interface WindSpotsView extends SpotWish {
  readonly of: FeatureId;
}

/** One computed map: the last good result stays while the next is computed. */
export interface Computation<Result> {
  readonly status: 'idle' | 'computing' | 'ready' | 'failed' | 'cancelled';
  /** 0 to 1. */
  readonly progress: number;
  readonly result: Result | null;
  /** True while `result` belongs to an earlier document, year or setting. */
  readonly stale: boolean;
  /** True while `result` follows a hand: nearly right, and soon replaced. */
  readonly live: boolean;
  readonly message: string | null;
}

/** Years after planting at which every patch is looked at. */
export const YEARS_LOOKED_AT = [0, 5, 10, 15, 20, 25, 30, 35, 40] as const;

/** Light of one patch in the chosen year and over the years. */
export interface PatchOutlook {
  readonly id: FeatureId;
  readonly name: string;
  /** True where no patch is drawn and the open ground of a field counts as one. */
  readonly implicit: boolean;
  readonly shareToKeep: number;
  /** Share of its area that must keep that light. */
  readonly areaShareToKeep: number;
  /** The year after planting that the next three are of. */
  readonly year: number;
  /** Mean share of open light, share of its area with enough, and whether that is enough. */
  readonly meanLightShare: number;
  readonly areaShareWithEnoughLight: number;
  readonly enoughLight: boolean;
  /** Null until the years have been followed. */
  readonly years: {
    /** First year after planting in which it is too dark and stays so to year 40; null: never. */
    readonly darkFromYear: number | null;
    /** What takes most of its light in that year; null: nothing that stands there, or never dark. */
    readonly darkBy: { readonly id: FeatureId; readonly label: string } | null;
    /** Rising by year; YEARS_LOOKED_AT and those looked at in between. */
    readonly looked: readonly {
      readonly year: number;
      readonly meanLightShare: number;
      readonly enoughLight: boolean;
    }[];
  } | null;
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
  /** Sites that were open before this one on this device, the latest first. */
  readonly earlierSites: readonly EarlierSite[];
  /** Names of files the site refers to that are not on this device. */
  readonly missingFiles: readonly string[];
  /** Counts the files kept in this visit, so that what refers to one is read again. */
  readonly filesKept: number;
  /** Counts the sites opened in this visit, so that nothing of the last one is shown of the next. */
  readonly opening: number;
  // derived from it
  readonly frame: Frame;
  /** Middle of the fields, or the place of an empty site; the frame’s own centre lies on a coarse step near it. */
  readonly centre: LonLat;
  readonly ground: Grid | null;
  readonly groundDescription: string;
  readonly grown: GrownPlan;
  /** Elevations of the terrain file, laid on the frame; null: none, or not read yet. */
  readonly terrain: Grid | null;
  /** The same of the surface file: tops of what stands around. */
  readonly surface: Grid | null;
  readonly weather: WeatherTable | null;
  /**
   * How fast each plant grew in each season, where shelter is reckoned to speed growth; the last known while it is
   * stepped anew.
   */
  readonly stepped: Computation<GrowthSpeeds>;
  /** The open wind as the shelter map was computed with it. */
  readonly windClimate: WindClimate | null;
  /** What the computations took for granted because the site does not say. */
  readonly assumed: readonly string[];
  // the view
  readonly step: StepId;
  readonly picture: Picture;
  readonly year: number;
  /** One year goes by after the other by itself. */
  readonly playing: boolean;
  /** Whether the years in one look are open in place of the strip's two curves. */
  readonly yearsOpen: boolean;
  readonly period: Period;
  readonly layer: Layer;
  /** One end of what is not known, at which everything is shown; null: as expected. */
  readonly shownEnd: SceneEnd | null;
  readonly inkedValues: InkedValues;
  /** Which guesses the shelter engine uses, and its rule for several belts. */
  readonly shelterOptions: ShelterOptions;
  readonly layout: string | null;
  /** What is supposed to be felled while it is looked at; nothing of it is in the document. */
  readonly felled: Felled | null;
  /** The planned belt whose first years are to be bridged. */
  readonly bridgesOf: FeatureId | null;
  /** The edge beside which the ground is asked about. */
  readonly edgeAsked: FeatureId | null;
  /** The edge that is to be insured against being felled, and how. */
  readonly insuranceWish: InsuranceWish | null;
  /** Which two layouts are compared, and how. */
  readonly comparing: Comparing;
  readonly unitSystem: UnitSystem;
  readonly selection: FeatureId | null;
  readonly hand: Hand;
  /** Where the pointer or the keyboard cross is; null: off the map. */
  readonly pointer: LonLat | null;
  readonly message: Message | null;
  readonly theme: Theme;
  readonly dialog: DialogName | null;
  /** On narrow screens: whether the panel lies over the map. */
  readonly panelOpen: boolean;
  readonly brush: Brush;
  readonly pointed: Pointed | null;
  /** Shown while the thing they are of is chosen. */
  readonly stakes: StakesView | null;
  /** The same; never both. */
  readonly windSpots: WindSpotsView | null;
  /** The spot that the horizon is looked at from, or was last. */
  readonly horizonAt: LonLat | null;
  /** The spot whose wind is looked at, or was last. */
  readonly windAt: LonLat | null;
  /** Name of a kept picture that waits to be laid on the ground. */
  readonly pictureToLay: string | null;
  /** Cell size the person asked for; null: chosen from the area. */
  readonly cellWantedM: number | null;
  readonly problems: readonly SiteProblem[];
  // the answers
  readonly light: Computation<LightResult>;
  readonly shelter: Computation<ShelterResult>;
  readonly outlook: Computation<readonly PatchOutlook[]>;
  readonly costs: Computation<readonly ThingCost[]>;
  /** Some years on coarse cells; all of them, cell by cell, while they are looked at or played. */
  readonly yearsLook: Computation<YearsLook>;
  /** On coarse cells, whatever end is shown. */
  readonly lightEnds: Computation<AtEnds<LightResult>>;
  readonly shelterEnds: Computation<AtEnds<ShelterResult>>;
  /** While its map is shown. */
  readonly sunTimes: Computation<FirstLastSun>;
  readonly sunTimeEnds: Computation<AtEnds<FirstLastSun>>;
  /** While its dialog is open. */
  readonly horizon: Computation<HorizonFound>;
  /** What is asked of new belts, and what was said of those proposed. */
  readonly proposing: Proposing;
  /** Belts for a field, when they are asked for. */
  readonly proposals: Computation<BeltProposals>;
  /** What was said of the cuts that were proposed. */
  readonly cutting: Cutting;
  /** The cuts of a winter, when they are asked for. */
  readonly winterCuts: Computation<WinterCuts>;
  /** While its dialog is open. */
  readonly windHere: Computation<WindFound>;
  /** While wind spots are open. */
  readonly spotPlan: Computation<SpotPlanFound>;
  /** While those open have been read. */
  readonly spotScore: Computation<SpotScoreFound>;
  /** While the Shelter step is open or a belt is chosen: the sun that each belt and block takes from the patches… */
  readonly beltSun: Computation<ReadonlyMap<FeatureId, readonly Darkened[]>>;
  /** …and when each planned belt protects. */
  readonly beltYears: Computation<ReadonlyMap<FeatureId, BeltWhen>>;
  /** Of the belt and the edge that were asked for. */
  readonly bridges: Computation<readonly BridgeOffer[]>;
  readonly insurance: Computation<Insurance>;
  /** Beside the edge that was asked about, while it is chosen. */
  readonly edgeProfile: Computation<EdgeProfile>;
  /** While its map is shown or the ground is chosen. */
  readonly coldAir: Computation<ColdAir>;
  /** While the fields are compared. */
  readonly fieldsCompared: Computation<FieldsCompared>;
  /** While two layouts are looked at beside each other. */
  readonly layoutPair: Computation<LayoutPairFound>;
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
  /** Another site takes the place of this one; its undo starts empty. */
  openDocument(document: SiteDocument, view?: Partial<AppState>): void;
  select(id: FeatureId | null): void;
  takeHand(hand: Hand): void;
  /** A point was given while `hand.doing === 'pointing'`. */
  pointGiven(lonLat: LonLat): void;
  setPointer(lonLat: LonLat | null): void;
  show(
    view: Partial<
      Pick<
        AppState,
        | 'step'
        | 'picture'
        | 'year'
        | 'playing'
        | 'yearsOpen'
        | 'period'
        | 'layer'
        | 'shownEnd'
        | 'inkedValues'
        | 'shelterOptions'
        | 'layout'
        | 'felled'
        | 'bridgesOf'
        | 'edgeAsked'
        | 'insuranceWish'
        | 'comparing'
        | 'unitSystem'
        | 'theme'
        | 'dialog'
        | 'panelOpen'
        | 'cellWantedM'
        | 'pictureToLay'
        | 'horizonAt'
        | 'windAt'
        | 'stakes'
        | 'windSpots'
      >
    >,
  ): void;
  setBrush(brush: Partial<Brush>): void;
  say(message: Message | null): void;
  /** Looks for belts as they are asked for. */
  proposeBelts(): void;
  /** Looks for the cuts before the season that is shown. */
  proposeCuts(): void;
  cancelComputation(): void;
  /** Starts again what failed or was stopped. */
  computeAgain(): void;
  newSite(placeLonLat: LonLat, name: string): Promise<void>;
  openDemo(which: 'sorrel-bank' | 'kestrel-flat'): Promise<void>;
  /** Keeps a file the site refers to (terrain, weather, picture) under its name on this device. */
  keepSiteFile(file: File): Promise<string>;
  /** A site file, a boundary or track to import, a terrain or photo raster, a picture, a weather file: whatever was dropped. */
  openFiles(files: readonly File[]): Promise<void>;
  /** A raster of the tops of what stands around. */
  openSurface(file: File): Promise<void>;
  saveFile(): void;
}

/** Everything the store holds, flat: what is shown and what can be done. */
export type App = AppState & Actions;
