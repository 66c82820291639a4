import type { LonLat } from '../geo/frame.ts';
import type { PaperSize } from './paper.ts';
import type { LengthUnit } from './plan-input.ts';

/** The view around a spot, unrolled from north clockwise: plain data, no engine. All angles are degrees, azimuths from true north. */
export interface HorizonView {
  readonly readingHeightM: number;
  /** 0 = January: the month on whose middle day the leaves and one of the sun's paths are drawn. */
  readonly month: number;
  readonly stepDeg: number;
  readonly columns: number;
  readonly rows: number;
  /** Share of light that foliage lets through, 1 where there is none; row-major from the zenith, cell centres. */
  readonly letThrough: Float32Array;
  /** The land's horizon at the centre of each column. */
  readonly landAltitudeDeg: Float32Array;
  /** The things in sight, nearest first. */
  readonly outlines: readonly SeenOutline[];
  readonly sunPaths: readonly DrawnSunPath[];
}

/** One thing as it stands before the sky. */
export interface SeenOutline {
  /** Index into the names and the hours of things. */
  readonly thing: number;
  readonly solid: boolean;
  readonly nearestM: number;
  /** Azimuth and altitude in turn, closed implicitly. */
  readonly rings: readonly Float32Array[];
  readonly topAzimuthDeg: number;
  readonly topAltitudeDeg: number;
  readonly letsThrough: number;
}

/** The sun's way over one day. */
export interface DrawnSunPath {
  readonly which: 'june-solstice' | 'december-solstice' | 'march-equinox' | 'september-equinox' | 'month';
  readonly month: number;
  readonly dayOfMonth: number;
  readonly clock: string;
  /** Azimuth and altitude in turn, from sunrise to sunset. */
  readonly points: Float32Array;
  readonly hours: readonly {
    readonly clockHour: number;
    readonly azimuthDeg: number;
    readonly altitudeDeg: number;
  }[];
}

/** Hours of sun in a period: open = got + to the things one by one + to the land + shared. */
export interface HorizonHours {
  readonly open: number;
  readonly got: number;
  readonly toLand: number;
  readonly shared: number;
  /** What would come back if the thing alone were gone, by its index. */
  readonly toThings: readonly number[];
}
export type HorizonPeriod = 'month' | 'season' | 'year';

/** What is seen from a spot and what it costs there. */
export interface HorizonInput {
  readonly view: HorizonView;
  /** What the view's `thing` indices stand for. */
  readonly things: readonly { readonly label: string }[];
  readonly hours: Readonly<Record<HorizonPeriod, HorizonHours>>;
  /** "April–September". */
  readonly seasonWords: string;
  /** Compass declination, east positive. */
  readonly declinationDeg: number;
  readonly unit: LengthUnit;
}

/** All that the printed horizon shows. */
export interface HorizonPageInput extends HorizonInput {
  readonly paper: PaperSize;
  readonly siteName: string;
  readonly layoutName: string | null;
  readonly date: string;
  /** Years after planting, and the season that is. */
  readonly year: number;
  readonly calendarYear: number;
  readonly lonLat: LonLat;
  /** How the spot is found by tape and compass, one sentence each. */
  readonly findIt: readonly string[];
  /** What was taken for granted because the site does not say. */
  readonly assumed: readonly string[];
}
