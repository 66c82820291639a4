import type { LocalXY } from '../geo/frame.ts';
import { directionWord } from '../units/compass.ts';
import { distanceToRing } from '../wind/footprint.ts';
import { DOWNWIND_REACH_H } from '../wind/weps.ts';
import type { BeltCrossing } from './belt-crossing.ts';
import type { SceneOnDay } from './scene-on-day.ts';
import { shareAt } from './share-at.ts';
import type { SpotWind } from './spot-plan.ts';

/** Shelter is "still quite effective up to 40 degrees either way" (Cleugh 1997; Burke 1998); beyond it sources part. */
const MOST_OFF_SQUARE_DEG = 40;
/** Beside an end and in a gap the wind is faster, to two heights aside (the engine's own guess). */
const END_H = 2;
/** What moves the share by less is not felt beside the belt. */
const FELT_SHARE = 0.03;

/** Why nothing is promised at a spot; null: it is good. */
export function wrongWith(
  day: SceneOnDay,
  at: LocalXY,
  wind: SpotWind,
  crossing: BeltCrossing | null,
): string | null {
  const { belt, label } = day;
  const heightM = belt.heightM[0];
  const share = shareAt(day, at, wind);
  if (Number.isNaN(share)) return 'it lies inside a building, or where the ground is not known';
  if (!crossing)
    return `a wind from the ${directionWord(wind.fromDeg)} passes ${label} by before it gets there`;
  if (crossing.distanceM < 0)
    return `it lies before ${label}, not behind it, in a wind from the ${directionWord(wind.fromDeg)}`;
  if (crossing.offSquareDeg > MOST_OFF_SQUARE_DEG)
    return `the wind meets ${label} ${Math.round(crossing.offSquareDeg)}° off square; beyond ${MOST_OFF_SQUARE_DEG}° nobody agrees what a belt does`;
  if (crossing.distanceM > DOWNWIND_REACH_H * heightM)
    return `it lies further than ${DOWNWIND_REACH_H} heights behind ${label}: the wind is open again`;
  if (crossing.toEndM < END_H * heightM)
    return `the wind that gets there crosses ${label} within two heights of its end, where it is faster round the end or through the gap`;
  const other = otherShelter(day, at, wind);
  return other === null ? null : `${other} ${other === 'single trees' ? 'take' : 'takes'} wind there too`;
}

/** What besides the belt slows the wind at a spot: its label, "single trees", or null. */
function otherShelter(day: SceneOnDay, at: LocalXY, wind: SpotWind): string | null {
  const { scene, belt, things } = day;
  const others = scene.barriers.filter((barrier) => barrier !== belt);
  const open = shareAt(day, at, wind, { barriers: [], bare: true });
  if (Math.abs(shareAt(day, at, wind, { barriers: others }) - open) < FELT_SHARE) return null;
  let most = { label: 'single trees', taken: open - shareAt(day, at, wind, { barriers: [] }) };
  for (const barrier of others) {
    if (distanceToRing(at[0], at[1], barrier.xyM) > DOWNWIND_REACH_H * Math.max(...barrier.heightM)) continue;
    const taken = Math.abs(open - shareAt(day, at, wind, { barriers: [barrier], bare: true }));
    if (taken > most.taken) most = { label: things[barrier.thing].label, taken };
  }
  return most.label;
}
