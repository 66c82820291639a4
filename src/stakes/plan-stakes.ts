import { type LocalXY, type LonLat, toLonLat } from '../geo/frame.ts';
import { tapedDistance } from '../geo/tape.ts';
import type { Point3 } from '../light/shadow-tip.ts';
import { findablePoints } from '../outside/findable-points.ts';
import { groundCautions } from '../outside/ground-cautions.ts';
import { offsets, tapeCautions } from '../outside/offsets.ts';
import { readDate } from '../outside/read-date.ts';
import { referenceLine } from '../outside/reference-line.ts';
import type { SiteOutdoors } from '../outside/site-outdoors.ts';
import { groundAt } from '../scene/ground-at.ts';
import type { FeatureId } from '../site/document.ts';
import { radToDeg } from '../units/angle.ts';
import { BadInputError } from '../units/bad-input.ts';
import { findTips } from './find-tips.ts';
import { FURTHEST_M, type Stake, type StakePlan, type StakeWish } from './stake-plan.ts';
import { type StakedThing, stakedThing } from './staked-thing.ts';
import { tipAt } from './tip-at.ts';

/** For the change of the tip with height, m. */
const HEIGHT_STEP_M = 0.1;

/**
 * Where the tip of a thing's shadow will be on a day, as stakes that can be found with two tapes.
 * @throws BadInputError for a wish that cannot be read, a thing without a shadow, or a day without any stake.
 */
export function planStakes(site: SiteOutdoors, id: FeatureId, wish: StakeWish): StakePlan {
  const { document, frame, ground, layout } = site;
  const { timeZone } = document.site;
  const date = readDate(wish.date);
  const thing = stakedThing(site, id, date);
  const alongM = placeAlong(thing, wish.alongM);
  const { tips, without } = findTips(site, thing, alongM, { ...wish, date });
  if (tips.length === 0)
    throw new BadInputError(
      `No tip of the shadow of ${thing.label} can be staked on ${date}: ${
        without.map(({ time, why }) => `at ${time} ${why}`).join('; ') || 'the sun is not up for two hours'
      }; expected a time with the sun well up, or another day.`,
    );
  const placeOf = (point: Point3): LonLat => toLonLat(frame, [point.xM, point.yM] as LocalXY);
  const places = tips.map(({ tip }) => placeOf(tip.at));
  const found = findablePoints(document, frame, layout);
  const line = referenceLine(found, wish.line, places, frame, ground);
  const cautionsAt = groundCautions(site);
  const stakes = tips.map(({ time, utcMs, sun, tip }, i): Stake => {
    const taped = offsets(site, line, places[i]);
    const taller = tipAt(site, thing, sun, alongM, FURTHEST_M, thing.heightM + HEIGHT_STEP_M);
    return {
      number: i + 1,
      time,
      utcMs,
      sunAltitudeDeg: radToDeg(sun.altitudeRad),
      sunAzimuthDeg: radToDeg(sun.trueAzimuthRad),
      lonLat: places[i],
      castOver: placeOf(tip.cast),
      castHeightM: tip.cast.zM - groundAt(ground, tip.cast.xM, tip.cast.yM),
      fromFoot: tapedDistance(
        frame,
        ground,
        thing.kind === 'tree' ? thing.middle : placeOf(tip.cast),
        places[i],
      ),
      fuzzyM: tip.fuzzyM,
      furtherPerMetreM: taller ? (taller.lengthM - tip.lengthM) / HEIGHT_STEP_M : Number.POSITIVE_INFINITY,
      ...taped,
      cautions: [...tapeCautions(taped), ...cautionsAt(places[i])],
    };
  });
  return {
    thing,
    date,
    timeZone,
    alongM,
    points: found.points,
    line,
    stakes,
    without,
    notes: notesOf(thing),
  };
}

function placeAlong(thing: StakedThing, wanted: number | null | undefined): number | null {
  if (thing.kind === 'tree') return null;
  if (wanted === undefined || (wanted === null && thing.places[0].alongM !== null))
    return thing.places[0].alongM;
  if (wanted !== null && !(wanted >= 0 && wanted <= thing.lineM + 0.005))
    throw new BadInputError(
      `The place is ${wanted} m along ${thing.label}; expected 0 to ${thing.lineM.toFixed(1)} m.`,
    );
  return wanted;
}

const BARE = 0.25;

function notesOf(thing: StakedThing): string[] {
  const notes: string[] = [];
  if (thing.leafShare < BARE)
    notes.push('Without leaves the shadow is thin: look for the end of the twigs, not for a dark edge.');
  return notes;
}
