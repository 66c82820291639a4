import type { LocalXY } from '../geo/frame.ts';
import type { GrowthMoment } from '../scene/options.ts';
import { SHELTER_GUESSES } from '../wind/shelter-guesses.ts';
import type { ShelterOptions } from '../wind/shelter-types.ts';
import { metersSpread } from './hand-meters.ts';
import { measuredRange } from './measured-range.ts';
import type { SceneOnDay } from './scene-on-day.ts';
import { type ShareChange, shareAt } from './share-at.ts';
import { type Expected, METER_MINUTES, type RangePart, type SpotWind } from './spot-plan.ts';

/** A wind direction by ribbon and compass, averaged over ten minutes: half a point of sixteen. Common practice, no source. */
const DIRECTION_DEG = 11.25;
/** A height by shadow, stick or angle. Common practice, no source. */
const HEIGHT_SHARE = 0.05;
/** A part that moves the share by less is not named. */
const LEAST_PART = 0.005;

/** What is known of the wind and the land besides the belt. */
export interface SpotConditions {
  readonly wind: SpotWind;
  readonly openMps: number;
  readonly roughnessM: number;
  /** Porosity of the belt on the day. */
  readonly porosity: number;
  readonly distanceH: number;
  readonly offSquareDeg: number;
  /** Length of the belt. */
  readonly lengthM: number;
}

/** The guesses of the engine that act on this belt in this wind; each is left out once. */
function guessesActing({ scene, belt }: SceneOnDay, { offSquareDeg, distanceH, lengthM }: SpotConditions) {
  const heightM = belt.heightM[0];
  const acts: Partial<Record<keyof ShelterOptions, boolean>> = {
    obliqueWind: offSquareDeg > SQUARE_DEG,
    shortThings: distanceH * heightM > lengthM,
    raisedFeet: belt.baseM > 0,
    landform: scene.relief !== null,
  };
  return SHELTER_GUESSES.filter(({ key }) => acts[key]);
}
/** A wind that meets a belt so nearly square is square. */
const SQUARE_DEG = 5;

/**
 * What two meters should show at a spot: the engine's share, and how far each thing that is not known may move it. The
 * parts do not hang together, so that they add as squares; what was measured behind other belts is laid beside.
 */
export function expectedAt(day: SceneOnDay, at: LocalXY, conditions: SpotConditions): Expected {
  const { wind, openMps, roughnessM } = conditions;
  const share = shareAt(day, at, wind);
  const part = (name: string, says: string, shares: readonly number[]): RangePart => {
    const off = shares.filter((each) => !Number.isNaN(each)).map((each) => each - share);
    return { name, says, below: Math.max(0, -Math.min(0, ...off)), above: Math.max(0, ...off) };
  };
  const withBelt = (change: Partial<Pick<GrowthMoment, 'pace' | 'foliage'>>, heightShare = 1) => {
    const belt = day.beltAt(change);
    return shareAt(day, at, wind, {
      barriers: instead(day, { ...belt, heightM: belt.heightM.map((heightM) => heightM * heightShare) }),
    });
  };
  const metersShare = metersSpread(share, openMps, METER_MINUTES, roughnessM);
  const grows = day.feature.properties.kind === 'belt';
  const parts = [
    ...(grows
      ? [
          part('foliage', 'the belt as dense and as open as published figures for such trees lie apart', [
            withBelt({ foliage: 'dense' }),
            withBelt({ foliage: 'open' }),
          ]),
        ]
      : []),
    part('height', `its height ${HEIGHT_SHARE * 100} % more or less${grows ? ', growth slow or fast' : ''}`, [
      withBelt({}, 1 - HEIGHT_SHARE),
      withBelt({}, 1 + HEIGHT_SHARE),
      ...(grows ? [withBelt({ pace: 'slow' }), withBelt({ pace: 'fast' })] : []),
    ]),
    part('direction', 'the wind from half a point of the compass further round, either way', [
      shareAt(day, at, { ...wind, fromDeg: wind.fromDeg - DIRECTION_DEG }),
      shareAt(day, at, { ...wind, fromDeg: wind.fromDeg + DIRECTION_DEG }),
    ]),
    ...guessesActing(day, conditions).map(({ key, name }) => {
      const options: ShareChange['options'] = { [key]: false };
      return part(name.toLowerCase(), 'this guess of the engine left out', [
        shareAt(day, at, wind, { options }),
      ]);
    }),
    {
      name: 'gusts and meters',
      says: `two like meters over ${METER_MINUTES} minutes, swapped half-way: nine of ten readings`,
      below: metersShare,
      above: metersShare,
    },
  ].filter(({ below, above }) => Math.max(below, above) >= LEAST_PART);
  const byFunction = {
    low: Math.max(0, share - Math.hypot(...parts.map(({ below }) => below))),
    high: share + Math.hypot(...parts.map(({ above }) => above)),
  };
  const measured = measuredRange(conditions.distanceH, conditions.porosity);
  return {
    share,
    byFunction,
    measured,
    low: Math.max(0, Math.min(byFunction.low, measured ? measured.low - metersShare : 1)),
    high: Math.max(byFunction.high, measured ? measured.high + metersShare : 0),
    parts,
    metersShare,
  };
}

/** All barriers, one of them in another state. */
export const instead = ({ scene, belt }: SceneOnDay, other: SceneOnDay['belt']) =>
  scene.barriers.map((barrier) => (barrier === belt ? other : barrier));
