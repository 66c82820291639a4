import type { LonLat } from '../geo/frame.ts';
import type { FindablePoint } from '../outside/findable-points.ts';
import type { Offsets } from '../outside/offsets.ts';
import type { ReferenceLine } from '../outside/reference-line.ts';
import type { FeatureId } from '../site/document.ts';
import type { ShelteringKind } from './sheltering-feature.ts';

/** Both meters are held this high, m: chest height, where the shelter map is read. */
export const METER_HEIGHT_M = 1.5;
/** Both meters run this long, swapped half-way, minutes. */
export const METER_MINUTES = 10;
/** Heights behind a belt that are asked for where none are named. */
export const USUAL_HEIGHTS: readonly number[] = [2, 5, 10, 15];

/** The wind that is waited for. */
export interface SpotWind {
  /** Where it comes from, degrees clockwise from true north. */
  readonly fromDeg: number;
  /** Mean in the open at 10 m, m/s. */
  readonly speedMps: number;
}

/** One reason why a reading may differ from the function; as shares of open wind, below and above it. */
export interface RangePart {
  readonly name: string;
  /** What was supposed, and where its size comes from. */
  readonly says: string;
  readonly below: number;
  readonly above: number;
}

export interface ShareRange {
  readonly low: number;
  readonly high: number;
}

/** What two meters should show, as shares of the open wind at the same height. */
export interface Expected extends ShareRange {
  /** The shelter engine's own figure. */
  readonly share: number;
  /** That figure with all that is not known of this belt, this wind and these meters. */
  readonly byFunction: ShareRange;
  /** Between the best and the weakest belt that was ever measured at this distance; null: none was, or none as open. */
  readonly measured: ShareRange | null;
  readonly parts: readonly RangePart[];
  /** What the meters alone may be off by: nine of ten readings. */
  readonly metersShare: number;
}

/** One place behind the belt, and how it is found with tapes. */
export interface WindSpot extends Offsets {
  /** From 1, from the belt outwards, then the places pointed at. */
  readonly number: number;
  /** "5 heights behind", "a chosen place". */
  readonly words: string;
  readonly lonLat: LonLat;
  /** Where the wind that arrives there crosses the belt. */
  readonly crossing: LonLat;
  /** Along the wind from the middle of the belt, metres and belt heights. */
  readonly distanceM: number;
  readonly distanceH: number;
  /** Between the wind and square to the belt there, degrees. */
  readonly offSquareDeg: number;
  readonly expected: Expected;
  /** What to know before a meter is held there; often none. */
  readonly cautions: readonly string[];
}

/** A place for which nothing is promised. */
export interface NoSpot {
  readonly words: string;
  /** "it lies behind North alder belt too". */
  readonly why: string;
}

/** Where the meter in the open stands. */
export interface OpenPlace {
  readonly words: string;
  readonly lonLat: LonLat;
  /** Of open wind, by the model. */
  readonly share: number;
}

/** The belt as it stands on the day. */
export interface SpotBelt {
  readonly id: FeatureId;
  readonly kind: ShelteringKind;
  readonly label: string;
  readonly heightM: number;
  /** Calendar year whose season's end the height is of. */
  readonly heightYear: number;
  /** Share of daylight that shows through its foliage on the day. */
  readonly porosity: number;
  /** Share of full leaf on the day. */
  readonly leafShare: number;
  readonly lineM: number;
  readonly middle: LonLat;
}

export interface SpotPlan {
  readonly belt: SpotBelt;
  /** YYYY-MM-DD. */
  readonly date: string;
  readonly wind: SpotWind;
  /** Open wind at the meters' height, m/s. */
  readonly openMps: number;
  /** Where the line across the belt begins, metres from the belt's first point. */
  readonly alongM: number;
  readonly points: readonly FindablePoint[];
  readonly line: ReferenceLine;
  readonly spots: readonly WindSpot[];
  readonly without: readonly NoSpot[];
  /** Null: the model knows no open place in the fields. */
  readonly open: OpenPlace | null;
  readonly notes: readonly string[];
}

/** What is asked for. */
export interface SpotWish {
  /** YYYY-MM-DD. */
  readonly date: string;
  readonly wind: SpotWind;
  /** Heights behind the belt, square to it. */
  readonly heights: readonly number[];
  /** Where along the belt, metres from its first point; null: its middle. */
  readonly alongM: number | null;
  /** Any other places. */
  readonly places: readonly LonLat[];
  /** Letters of the two points to tape from; null: the nearest side of a field. */
  readonly line: readonly [string, string] | null;
}
