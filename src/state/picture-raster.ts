import { type SlopeAspect, slopeAndAspect } from '../geo/terrain.ts';
import { cellCount, type Grid, type GridSpec } from '../numeric/grid.ts';
import {
  type BandSet,
  COLD_AIR_BANDS,
  DAILY_LIGHT_BANDS,
  SLOPE_BANDS,
  SUN_HOUR_BANDS,
  WIND_CUT_BANDS,
} from '../units/bands.ts';
import { MONTHS } from '../units/months.ts';
import { supposedInWords } from './end-words.ts';
import { followedYear } from './followed-year.ts';
import { type InkedLine, inkedLines, isLightQuantity } from './inked-lines.ts';
import { lightBandsOf } from './light-bands.ts';
import { type LightQuantity, lightOfPeriod } from './light-period.ts';
import type { AppState, Computation, Period } from './model.ts';
import { READING_HEIGHT_M, WIND_READING_HEIGHT_M } from './reading-height.ts';
import { dayInWords, isSunTime, monthOfSun, sunTimeBands, sunTimeToInk } from './sun-times.ts';
import { windBand } from './wind-band.ts';

/** What the map is inked with: one value a cell and the bands that name them. */
export interface PictureRaster {
  readonly grid: GridSpec;
  /** Row-major from the north-west; NaN where there is nothing to ink. */
  readonly values: Float32Array;
  readonly bands: BandSet;
  /** Values at which a heavier line is drawn, lowest first. */
  readonly lines: readonly InkedLine[];
  /** What it is drawn with in place of what is expected: "crowns a fifth wider"; null: nothing. */
  readonly supposed: string | null;
  /** Of what period and height: "growing season, year 20, 0.1 m above the ground". */
  readonly detail: string;
  /** The same without the year, for sheets that give it elsewhere. */
  readonly seasonAndHeight: string;
  /** True while it belongs to an earlier site, year or setting. */
  readonly stale: boolean;
  /** True while it follows a hand: painted in fewer pixels, to keep up. */
  readonly live: boolean;
}

const bandsOf = (quantity: LightQuantity, state: Needs): BandSet =>
  quantity === 'light-share'
    ? lightBandsOf(state.document.site)
    : quantity === 'sun-hours'
      ? SUN_HOUR_BANDS
      : DAILY_LIGHT_BANDS;

const periodInWords = (period: Period): string =>
  period === 'season' ? 'growing season' : period === 'year' ? 'whole year' : MONTHS[period];

type Needs = Pick<
  AppState,
  | 'picture'
  | 'period'
  | 'year'
  | 'layer'
  | 'shownEnd'
  | 'inkedValues'
  | 'document'
  | 'frame'
  | 'centre'
  | 'ground'
  | 'light'
  | 'shelter'
  | 'sunTimes'
  | 'coldAir'
  | 'yearsLook'
>;

let lastParts: readonly unknown[] = [];
let lastRaster: PictureRaster | null = null;

/** The raster of the chosen picture and period; null for a plain map or while nothing has been computed. The same object as long as nothing that matters changed. */
export function pictureRaster(state: Needs): PictureRaster | null {
  const answer = isLightQuantity(state.picture)
    ? state.light
    : isSunTime(state.picture)
      ? state.sunTimes
      : state.picture === 'wind-cut'
        ? state.shelter
        : state.picture === 'cold-air'
          ? state.coldAir
          : null;
  const parts = [
    state.picture,
    state.period,
    state.year,
    state.layer,
    state.shownEnd,
    state.inkedValues,
    state.document.site,
    state.ground,
    state.frame,
    answer?.result ?? null,
    answer?.stale ?? false,
    answer?.live ?? false,
    answer && isBehind(answer) ? followedYear(state) : null,
  ];
  if (parts.length === lastParts.length && parts.every((part, i) => Object.is(part, lastParts[i])))
    return lastRaster;
  lastParts = parts;
  lastRaster = paint(state);
  return lastRaster;
}

/** Nothing of the chosen year is there yet, or what is there is of an earlier one. */
const isBehind = ({ result, stale }: Computation<unknown>): boolean => result === null || stale;

/** The chosen year as the years in one look hold it, until its own map is there; null: they do not hold it. */
function paintFollowed(state: Needs, answer: Computation<unknown>): PictureRaster | null {
  const { picture, period, year } = state;
  const followed = isBehind(answer) ? followedYear(state) : null;
  if (!followed) return null;
  const { grid, fieldName } = followed;
  const values =
    picture === 'light-share'
      ? followed.lightShare
      : picture === 'sun-hours'
        ? followed.sunHours
        : picture === 'wind-cut'
          ? followed.windCut
          : null;
  if (!values) return null;
  const ofLight = isLightQuantity(picture);
  const season = ofLight ? periodInWords(period) : WIND_SEASONS[windBand(state)];
  const height = `${ofLight ? READING_HEIGHT_M[state.layer] : WIND_READING_HEIGHT_M} m above the ground`;
  return {
    grid,
    values,
    bands: ofLight ? bandsOf(picture, state) : WIND_CUT_BANDS,
    lines: ofLight ? inkedLines(state) : [],
    supposed: supposedInWords(state.shownEnd),
    detail: `${season}, year ${year}, ${height}; ${fieldName} as the years go by`,
    seasonAndHeight: `${season}, ${height}`,
    stale: false,
    live: true,
  };
}

function paint(state: Needs): PictureRaster | null {
  const { picture, period } = state;
  const supposed = supposedInWords(state.shownEnd);
  if (isLightQuantity(picture)) {
    const followed = paintFollowed(state, state.light);
    if (followed) return followed;
    const result = state.light.result;
    if (!result) return null;
    const height = `${READING_HEIGHT_M[state.layer]} m above the ground`;
    return {
      grid: result.grid,
      values: lightOfPeriod(result, picture, period, state.document.site.baseYear + state.year),
      bands: bandsOf(picture, state),
      lines: inkedLines(state),
      supposed,
      detail: `${periodInWords(period)}, year ${state.year}, ${height}`,
      seasonAndHeight: `${periodInWords(period)}, ${height}`,
      stale: state.light.stale,
      live: state.light.live,
    };
  }
  if (isSunTime(picture)) {
    const result = state.sunTimes.result;
    if (!result) return null;
    const month = monthOfSun(state);
    const day = dayInWords(result, month);
    const counted = `half of its beam or more, ${READING_HEIGHT_M[state.layer]} m above the ground`;
    return {
      grid: result.grid,
      values: sunTimeToInk(result, picture, month),
      bands: sunTimeBands(result, picture, month),
      lines: [],
      supposed,
      detail: `${day}, year ${state.year}, ${counted}`,
      seasonAndHeight: `${day}, ${counted}`,
      stale: state.sunTimes.stale,
      live: false,
    };
  }
  if (picture === 'wind-cut') {
    const followed = paintFollowed(state, state.shelter);
    if (followed) return followed;
    const result = state.shelter.result;
    if (!result) return null;
    const cells = cellCount(result.grid);
    const band = windBand(state);
    const share = result.windShare.subarray(band * cells, (band + 1) * cells);
    return {
      grid: result.grid,
      values: share.map((each) => 1 - each),
      bands: WIND_CUT_BANDS,
      lines: [],
      supposed,
      detail: `${WIND_SEASONS[band]}, year ${state.year}, ${WIND_READING_HEIGHT_M} m above the ground`,
      seasonAndHeight: `${WIND_SEASONS[band]}, ${WIND_READING_HEIGHT_M} m above the ground`,
      stale: state.shelter.stale,
      live: false,
    };
  }
  if (picture === 'cold-air') {
    const { result, stale } = state.coldAir;
    if (!result) return null;
    return {
      grid: result.grid,
      values: result.dammedDepthM,
      bands: COLD_AIR_BANDS,
      lines: [],
      supposed,
      detail: `on a still night, with what stands in year ${state.year}`,
      seasonAndHeight: 'on a still night, with what stands',
      stale,
      live: false,
    };
  }
  if (picture === 'slope' && state.ground) {
    return {
      grid: state.ground,
      values: slopeOf(state.ground, state.frame.convergenceRad).slopeDeg,
      bands: SLOPE_BANDS,
      lines: [],
      supposed: null,
      detail: 'of the ground',
      seasonAndHeight: 'of the ground',
      stale: false,
      live: false,
    };
  }
  return null;
}

const WIND_SEASONS = ['growing season', 'rest of the year', 'whole year'] as const;

const slopes = new WeakMap<Grid, SlopeAspect>();

/** Slope and aspect of the ground, worked out once for each ground. */
export function slopeOf(ground: Grid, convergenceRad: number): SlopeAspect {
  const known = slopes.get(ground);
  if (known) return known;
  const made = slopeAndAspect(ground, convergenceRad);
  slopes.set(ground, made);
  return made;
}
