import { curveOnSite, type HeightCurve, heightAfterSeasons } from './height-curve.ts';

/** Final size against usual ground that is believed, and that a site file may hold. */
export const LEAST_VIGOUR = 0.3;
export const MOST_VIGOUR = 2;

/**
 * Standard deviation of the logarithm of a height as it is measured with a stick, a shadow or an angle: 7 %. Common
 * practice, no source.
 */
export const READING_SPREAD = 0.07;
/** A reading that no vigour within the limits explains to three times that is a slip, not growth. */
const MOST_MISS = 3 * READING_SPREAD;

/** A plant whose start is known, with what was read of it later. Lengths in metres. */
export interface MeasuredPlant {
  /** Those of one name share a vigour. */
  readonly species: string;
  readonly curve: HeightCurve;
  readonly rootstockFactor: number;
  /** Height at planting, or the first reading where the year of planting is not known. */
  readonly startM: number;
  readonly readings: readonly PlantReading[];
}

export interface PlantReading {
  /** Growing seasons since the start; parts of one count. */
  readonly seasons: number;
  readonly heightM: number;
}

/** Height that the usual curve gives a plant after so many seasons, m. @param vigour site times species. */
export const expectedHeightM = (
  { curve, rootstockFactor, startM }: Omit<MeasuredPlant, 'readings' | 'species'>,
  vigour: number,
  seasons: number,
): number => heightAfterSeasons(curveOnSite(curve, rootstockFactor * vigour, 'usual'), startM, seasons);

const LOG_LEAST = Math.log(LEAST_VIGOUR);
const LOG_MOST = Math.log(MOST_VIGOUR);
/** To a thousandth of the vigour. */
const LOG_STEP = 0.001;

/**
 * What one plant says of vigour: the logarithm that fits its readings best (least squares of log heights), and how
 * little it moves them where they say little: shortly after planting every vigour gives the same height.
 */
export interface PlantVigour {
  readonly logVigour: number;
  /** Variance of that logarithm from measuring alone; Infinity: its readings say nothing. */
  readonly variance: number;
}

function logMisses(plant: MeasuredPlant, logVigour: number): number[] {
  const vigour = Math.exp(logVigour);
  return plant.readings.map(({ heightM, seasons }) =>
    Math.log(heightM / expectedHeightM(plant, vigour, seasons)),
  );
}

/** Heights rise with vigour, so the sum of squares falls to one lowest place: golden-section search. */
export function plantVigour(plant: MeasuredPlant): PlantVigour {
  const squares = (logVigour: number) =>
    logMisses(plant, logVigour).reduce((sum, miss) => sum + miss * miss, 0);
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [LOG_LEAST, LOG_MOST];
  while (high - low > LOG_STEP) {
    const [left, right] = [high - golden * (high - low), low + golden * (high - low)];
    if (squares(left) < squares(right)) high = right;
    else low = left;
  }
  const logVigour = (low + high) / 2;
  const ahead = logMisses(plant, logVigour + LOG_STEP);
  const sensitivity = logMisses(plant, logVigour - LOG_STEP).reduce(
    (sum, miss, i) => sum + ((miss - ahead[i]) / (2 * LOG_STEP)) ** 2,
    0,
  );
  return {
    logVigour,
    variance: sensitivity > 0 ? READING_SPREAD ** 2 / sensitivity : Number.POSITIVE_INFINITY,
  };
}

/** True where some vigour within the limits explains a reading as nearly as it can be measured. */
export const isBelievable = (plant: Omit<MeasuredPlant, 'readings'>, reading: PlantReading): boolean => {
  const miss = (logVigour: number) => logMisses({ ...plant, readings: [reading] }, logVigour)[0];
  return miss(LOG_MOST) < MOST_MISS && miss(LOG_LEAST) > -MOST_MISS;
};
