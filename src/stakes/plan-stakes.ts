import { type LocalXY, type LonLat, toLonLat } from '../geo/frame.ts';
import { azimuthDeg, destination } from '../geo/geodesic.ts';
import { alongAndRight, tapedDistance } from '../geo/tape.ts';
import type { Point3 } from '../light/shadow-tip.ts';
import { groundAt } from '../scene/ground-at.ts';
import type { FeatureId } from '../site/document.ts';
import { radToDeg } from '../units/angle.ts';
import { BadInputError } from '../units/bad-input.ts';
import { findTips } from './find-tips.ts';
import { findablePoints } from './findable-points.ts';
import { groundCautions } from './ground-cautions.ts';
import { referenceLine } from './reference-line.ts';
import { FURTHEST_M, type ReferenceLine, type Stake, type StakePlan, type StakeWish } from './stake-plan.ts';
import { type StakedSite, type StakedThing, stakedThing } from './staked-thing.ts';
import { tipAt } from './tip-at.ts';

/** For the change of the tip with height, m. */
const HEIGHT_STEP_M = 0.1;

/**
 * Where the tip of a thing's shadow will be on a day, as stakes that can be found with two tapes.
 * @throws BadInputError for a wish that cannot be read, a thing without a shadow, or a day without any stake.
 */
export function planStakes(site: StakedSite, id: FeatureId, wish: StakeWish): StakePlan {
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

/** @throws BadInputError when it is no day of the calendar. */
function readDate(date: string): string {
  const ms = /^\d{4}-\d{2}-\d{2}$/.test(date) ? Date.parse(`${date}T00:00:00Z`) : Number.NaN;
  if (Number.isNaN(ms) || new Date(ms).toISOString().slice(0, 10) !== date)
    throw new BadInputError(`The date is ${JSON.stringify(date)}; expected a day such as 2027-06-21.`);
  return date;
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

type Offsets = Pick<Stake, 'alongLine' | 'backwards' | 'square' | 'foot' | 'side' | 'fromA' | 'fromB'>;

function offsets({ frame, ground }: StakedSite, { a, b }: ReferenceLine, place: LonLat): Offsets {
  const { alongM, rightM } = alongAndRight(a.lonLat, b.lonLat, place);
  const foot = destination(a.lonLat, azimuthDeg(a.lonLat, b.lonLat), alongM);
  return {
    alongLine: tapedDistance(frame, ground, a.lonLat, foot),
    backwards: alongM < 0,
    square: tapedDistance(frame, ground, foot, place),
    foot,
    side: rightM < 0 ? 'left' : 'right',
    fromA: tapedDistance(frame, ground, a.lonLat, place),
    fromB: tapedDistance(frame, ground, b.lonLat, place),
  };
}

/** A long surveyor's tape. Common practice, no source. */
const TAPE_M = 50;
/** Beyond this a right angle laid out by eye or by 3-4-5 puts the stake off by more than its tip is blurred. Common practice, no source. */
const LONG_SQUARE_M = 20;

function tapeCautions({ alongLine, square, fromA, fromB }: Offsets): string[] {
  if (Math.max(alongLine.tapeM, square.tapeM) > TAPE_M)
    return ['further than a long tape reaches: move the tape on, or take another line'];
  return square.tapeM > LONG_SQUARE_M && Math.max(fromA.tapeM, fromB.tapeM) <= TAPE_M
    ? ['far to square off: check it by the two tapes']
    : [];
}

const BARE = 0.25;

function notesOf(thing: StakedThing): string[] {
  const notes: string[] = [];
  if (thing.leafShare < BARE)
    notes.push('Without leaves the shadow is thin: look for the end of the twigs, not for a dark edge.');
  return notes;
}
