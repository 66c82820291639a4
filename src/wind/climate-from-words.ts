import { BadInputError } from '../units/bad-input.ts';
import { COMPASS_POINTS, compassIndex, compassPoint } from '../units/compass.ts';
import { BEAUFORT_SCALE, middleSpeedMps } from './beaufort.ts';
import { DEFAULT_WEIBULL_K, exceedanceShare } from './weibull.ts';

/** One thing a person says about the wind: "gales from the south-west, often, in the rest of the year". */
export interface WindInWords {
  /** Degrees clockwise from true north, or a compass point by name. */
  readonly from: number | string;
  readonly season: 'growing' | 'rest' | 'year';
  /** Beaufort force by its land signs: what a strong day from there is like. */
  readonly force: number;
  readonly howOften: 'often' | 'sometimes' | 'rarely';
}

/** A sector as the site file holds it. */
export interface WordedSector {
  readonly fromDeg: number;
  readonly frequency: number;
  readonly meanSpeedMps: number;
  readonly weibullK: number;
  readonly season?: 'growing' | 'rest';
}

/** All of these are our guesses, without a source; the sectors they give are shown and can be corrected. */
const WEIGHTS = { often: 8, sometimes: 4, rarely: 1.5 };
/** Every sector has a little wind that nobody mentions. */
const UNMENTIONED_WEIGHT = 0.5;
const UNMENTIONED_MEAN_MPS = 2.5;
/** People remember the strong days: the named force is reached in one hour in twenty of the wind from there. */
const REMEMBERED_SHARE = 0.05;

/** Mean speed of a wind whose strongest twentieth reaches a speed. */
function meanOfRemembered(speedMps: number, k: number): number {
  // exceedanceShare depends on speed / mean alone, as exp(-(const * speed / mean)^k).
  const atMean = -Math.log(exceedanceShare(1, 1, k));
  return speedMps * (atMean / -Math.log(REMEMBERED_SHARE)) ** (1 / k);
}

/** Sectors a said direction covers: a main point of the compass also its neighbours, a finer one itself alone. */
function sectorsOf(from: number | string): readonly (readonly [number, number])[] {
  const index = typeof from === 'string' ? COMPASS_POINTS.indexOf(compassPoint(from)) : compassIndex(from);
  if (typeof from === 'number' || index % 2 === 1) return [[index, 1]];
  return [
    [(index + 15) % 16, 0.25],
    [index, 0.5],
    [(index + 1) % 16, 0.25],
  ];
}

function checkEntry(entry: WindInWords, index: number): void {
  const where = `Wind ${index + 1}`;
  if (!Number.isInteger(entry.force) || entry.force < 1 || entry.force >= BEAUFORT_SCALE.length) {
    throw new BadInputError(
      `${where} has the strength ${entry.force}; a Beaufort force from 1 to 12 is expected.`,
    );
  }
  if (typeof entry.from === 'number' && !(entry.from >= 0 && entry.from <= 360)) {
    throw new BadInputError(`${where} comes from ${entry.from} degrees; 0 to 360 is expected.`);
  }
}

function sectorsOfSeason(entries: readonly WindInWords[]): Omit<WordedSector, 'season'>[] {
  const weight = new Float64Array(16).fill(UNMENTIONED_WEIGHT);
  const run = new Float64Array(16).fill(UNMENTIONED_WEIGHT * UNMENTIONED_MEAN_MPS);
  for (const { from, force, howOften } of entries) {
    const mean = meanOfRemembered(middleSpeedMps(force), DEFAULT_WEIBULL_K);
    for (const [index, share] of sectorsOf(from)) {
      weight[index] += WEIGHTS[howOften] * share;
      run[index] += WEIGHTS[howOften] * share * mean;
    }
  }
  const total = weight.reduce((sum, one) => sum + one, 0);
  return COMPASS_POINTS.map(({ azimuthDeg }, i) => ({
    fromDeg: azimuthDeg,
    frequency: Number((weight[i] / total).toFixed(4)),
    meanSpeedMps: Number((run[i] / weight[i]).toFixed(1)),
    weibullK: DEFAULT_WEIBULL_K,
  }));
}

/**
 * Turns winds in words into sixteen sectors for the site file: for the whole year where no entry names a season,
 * otherwise for each season. Throws BadInputError where an entry makes no sense.
 */
export function sectorsFromWords(entries: readonly WindInWords[]): WordedSector[] {
  if (entries.length === 0) throw new BadInputError('No wind has been described; at least one is expected.');
  entries.forEach(checkEntry);
  if (entries.every(({ season }) => season === 'year')) return sectorsOfSeason(entries);
  return (['growing', 'rest'] as const).flatMap((season) =>
    sectorsOfSeason(entries.filter((entry) => entry.season === season || entry.season === 'year')).map(
      (sector) => ({ ...sector, season }),
    ),
  );
}
