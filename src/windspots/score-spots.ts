import { toLocal } from '../geo/frame.ts';
import { runToEnd, type Steps } from '../numeric/steps.ts';
import type { SiteOutdoors } from '../outside/site-outdoors.ts';
import type { FeatureId } from '../site/document.ts';
import { BadInputError } from '../units/bad-input.ts';
import { instead } from './expected-range.ts';
import { bestFits, NODES, type Read, type WindFit } from './fit-wind.ts';
import { metersDeviation } from './hand-meters.ts';
import type { KeptSpot } from './kept-spots.ts';
import { roughnessOf } from './plan-spots.ts';
import { type SceneOnDay, sceneOnDay } from './scene-on-day.ts';
import { type ScoredSpot, type SpotReadings, scoredReadings } from './scored-readings.ts';
import { shareAt } from './share-at.ts';

/** Fewer readings tell no explanation from another. */
const ENOUGH_READINGS = 3;

export interface SpotCauses {
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

export interface SpotScore extends SpotReadings, SpotCauses {}

export interface ScoreRequest {
  readonly site: SiteOutdoors;
  readonly of: FeatureId;
  readonly label: string;
  readonly kept: readonly KeptSpot[];
}

/** How far the model missed what was read behind a belt, and what would explain it; yields after each reading. */
export function* computeSpotScore({ site, of, label, kept }: ScoreRequest): Steps<SpotScore> {
  const scored = scoredReadings(label, kept);
  const days = new Map<string, SceneOnDay>();
  const reads: Read[] = [];
  for (const [i, each] of scored.readings.entries()) {
    yield i / scored.readings.length;
    const day = days.get(each.reading.date) ?? dayOrNull(site, of, each.reading.date);
    if (!day) continue;
    days.set(each.reading.date, day);
    reads.push(readOf(site, day, each));
  }
  const last = [...days.values()].at(-1);
  return {
    ...scored,
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

/** The same in one go. */
export const scoreSpots = (
  site: SiteOutdoors,
  of: FeatureId,
  label: string,
  kept: readonly KeptSpot[],
): SpotScore => runToEnd(computeSpotScore({ site, of, label, kept }));

function dayOrNull(site: SiteOutdoors, of: FeatureId, date: string): SceneOnDay | null {
  try {
    return sceneOnDay(site, of, date);
  } catch (reason) {
    if (!(reason instanceof BadInputError)) throw reason;
    return null;
  }
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
