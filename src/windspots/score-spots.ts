import { toLocal } from '../geo/frame.ts';
import type { SiteOutdoors } from '../outside/site-outdoors.ts';
import type { FeatureId } from '../site/document.ts';
import { BadInputError } from '../units/bad-input.ts';
import { instead } from './expected-range.ts';
import { bestFits, NODES, type Read, type WindFit } from './fit-wind.ts';
import { metersDeviation } from './hand-meters.ts';
import type { KeptSpot, MeterReading } from './kept-spots.ts';
import { roughnessOf } from './plan-spots.ts';
import { type SceneOnDay, sceneOnDay } from './scene-on-day.ts';
import { shareAt } from './share-at.ts';

/** A wind from further round than this is another wind than was written for, degrees. */
const SAME_WIND_DEG = 20;
/** So many days from the day that was written for leaves and heights are still the same. */
const SAME_SEASON_DAYS = 21;
/** A shorter reading is of a gust, minutes. */
const LEAST_MINUTES = 5;
/** Hand meters stall below this in the open, m/s. */
const LEAST_OPEN_MPS = 1.5;
/** Fewer readings tell no explanation from another. */
const ENOUGH_READINGS = 3;

export interface ScoredSpot {
  readonly kept: KeptSpot;
  readonly reading: MeterReading;
  /** Read share of open wind, and how far it is from the figure as it stood; above zero: more wind. */
  readonly share: number;
  readonly missShare: number;
  /** Whether it lies in the range by the function, only in that of all measured belts, or in neither, as they stood. */
  readonly within: 'function' | 'measured' | 'neither';
}

export interface SpotScore {
  readonly label: string;
  readonly readings: readonly ScoredSpot[];
  /** Readings that cannot be scored, and why. */
  readonly left: readonly { readonly kept: KeptSpot; readonly why: string }[];
  /** Written down and not read yet. */
  readonly waiting: readonly KeptSpot[];
  readonly meanMissShare: number;
  /** What explains the readings: the best and those as good; empty: the model as it is. Null: too few readings. */
  readonly fits: readonly WindFit[] | null;
  /** The belt as the site has it on the day of the last reading; null: it is not there. */
  readonly belt: {
    readonly heightM: number;
    readonly heightYear: number;
    readonly porosity: number;
    readonly inLeaf: boolean;
  } | null;
}

export function scoreSpots(
  site: SiteOutdoors,
  of: FeatureId,
  label: string,
  kept: readonly KeptSpot[],
): SpotScore {
  const readings: ScoredSpot[] = [];
  const left: { kept: KeptSpot; why: string }[] = [];
  for (const each of kept) {
    if (!each.reading) continue;
    const why = wrongWith(each, each.reading);
    if (why !== null) left.push({ kept: each, why });
    else readings.push(scored(each, each.reading));
  }
  const days = new Map<string, SceneOnDay>();
  const reads: Read[] = [];
  for (const each of readings) {
    const day = days.get(each.reading.date) ?? dayOrNull(site, of, each.reading.date);
    if (!day) continue;
    days.set(each.reading.date, day);
    reads.push(readOf(site, day, each));
  }
  const last = [...days.values()].at(-1);
  return {
    label,
    readings,
    left,
    waiting: kept.filter(({ reading }) => reading === null),
    meanMissShare: readings.reduce((sum, { missShare }) => sum + missShare, 0) / readings.length,
    fits: reads.length < ENOUGH_READINGS ? null : bestFits(reads),
    belt: last
      ? {
          heightM: last.belt.heightM[0],
          heightYear: last.beltYear,
          porosity: last.leafShare >= 0.5 ? last.belt.porosityOn : last.belt.porosityOff,
          inLeaf: last.leafShare >= 0.5,
        }
      : null,
  };
}

function dayOrNull(site: SiteOutdoors, of: FeatureId, date: string): SceneOnDay | null {
  try {
    return sceneOnDay(site, of, date);
  } catch (reason) {
    if (!(reason instanceof BadInputError)) throw reason;
    return null;
  }
}

/** Degrees between two directions, 0 to 180. */
const turnBetween = (a: number, b: number): number => Math.abs(((a - b + 540) % 360) - 180);

const DAY_MS = 86_400_000;

function wrongWith({ expected }: KeptSpot, reading: MeterReading): string | null {
  const turnDeg = turnBetween(reading.windFromDeg, expected.windFromDeg);
  if (turnDeg > SAME_WIND_DEG)
    return `the wind came from ${Math.round(turnDeg)}° further round than was written for`;
  const days = Math.abs(Date.parse(reading.date) - Date.parse(expected.date.slice(0, 10))) / DAY_MS;
  if (days > SAME_SEASON_DAYS)
    return `it was read ${Math.round(days)} days from the day that was written for: leaves and heights may be others`;
  if (reading.minutes < LEAST_MINUTES)
    return `the meters ran ${reading.minutes} minutes; in fewer than ${LEAST_MINUTES} a gust decides`;
  if (reading.openMps < LEAST_OPEN_MPS)
    return `the open wind was ${reading.openMps} m/s; below ${LEAST_OPEN_MPS} m/s hand meters stall`;
  return null;
}

function scored(kept: KeptSpot, reading: MeterReading): ScoredSpot {
  const { share: expected, functionLow, functionHigh, low, high } = kept.expected;
  const share = reading.spotMps / reading.openMps;
  const isIn = (from: number, to: number) => share >= from && share <= to;
  return {
    kept,
    reading,
    share,
    missShare: share - expected,
    within: isIn(functionLow, functionHigh) ? 'function' : isIn(low, high) ? 'measured' : 'neither',
  };
}

/** A reading beside the model as the site is now, in the wind as it came. */
function readOf(site: SiteOutdoors, day: SceneOnDay, { kept, reading, share }: ScoredSpot): Read {
  const at = toLocal(site.frame, kept.lonLat);
  const wind = { fromDeg: reading.windFromDeg, speedMps: kept.expected.windMps };
  const { belt } = day;
  const model = shareAt(day, at, wind);
  return {
    share,
    model,
    deviation: metersDeviation(model, reading.openMps, reading.minutes, roughnessOf(site)),
    under: {
      height: NODES.height.map((factor) =>
        shareAt(day, at, wind, {
          barriers: instead(day, { ...belt, heightM: belt.heightM.map((heightM) => factor * heightM) }),
        }),
      ),
      foliage: NODES.foliage.map((factor) =>
        shareAt(day, at, wind, {
          barriers: instead(day, {
            ...belt,
            porosityOn: belt.porosityOn ** factor,
            porosityOff: belt.porosityOff ** factor,
          }),
        }),
      ),
      open: NODES.open.map((factor) => model / factor),
    },
  };
}
