import { highestGroundM, type ShadowTip, sunClearsGround } from '../light/shadow-tip.ts';
import type { SiteOutdoors } from '../outside/site-outdoors.ts';
import { clockOfUtc, utcOfClock } from '../sun/clock-time.ts';
import { sunPosition } from '../sun/position.ts';
import { BadInputError } from '../units/bad-input.ts';
import { FURTHEST_M, type NoStake, type StakeWish } from './stake-plan.ts';
import type { StakedThing } from './staked-thing.ts';
import { type SeenSun, seenSun, tipAt } from './tip-at.ts';
import { whatHides } from './what-hides.ts';

const HOUR_MS = 3_600_000;
/** The sun counts as risen when its upper limb is seen: its centre stands lower by its radius and half a degree of air. */
const RISEN_RAD = -0.0145;

/** The tip of a shadow at one clock time. */
export interface TimedTip {
  readonly time: string;
  readonly utcMs: number;
  readonly sun: SeenSun;
  readonly tip: ShadowTip;
}

/**
 * The tips of a thing's shadow that can be seen and reached, at the times asked for or at the full hours of the day;
 * and the times that are no good, with what is wrong with them.
 * @throws BadInputError for a time that cannot be read.
 */
export function findTips(
  site: SiteOutdoors,
  thing: StakedThing,
  alongM: number | null,
  { date, times, longestM }: Pick<StakeWish, 'date' | 'times' | 'longestM'>,
): { tips: TimedTip[]; without: NoStake[] } {
  const { timeZone } = site.document.site;
  const hiddenBy = whatHides(site, thing.id, date);
  const highestM = highestGroundM(site.ground);
  const tips: TimedTip[] = [];
  const without: NoStake[] = [];
  const wanted = times
    ? [...new Set(times)].sort().map((time) => ({ time, utcMs: readTime(date, time, timeZone) }))
    : fullHours(date, timeZone, thing);
  for (const { time, utcMs } of wanted) {
    const sun = seenSun(site, thing, utcMs);
    const tip = tipAt(site, thing, sun, alongM, FURTHEST_M);
    const why = tip ? wrongWith(tip, sun) : sun.altitudeRad <= 0 ? 'the sun is not up' : OUT_OF_GROUND;
    if (tip && why === null) tips.push({ time, utcMs, sun, tip });
    else without.push({ time, why: why ?? OUT_OF_GROUND });
  }
  return { tips, without };

  function wrongWith(tip: ShadowTip, sun: SeenSun): string | null {
    if (!sunClearsGround(tip.cast, sun, { ground: site.ground, localPerM: thing.localPerM }, highestM))
      return 'the hill hides the sun';
    if (tip.lengthM > longestM)
      return `the shadow is ${Math.round(tip.lengthM)} m (${Math.round(tip.lengthM / 0.3048)} ft) long, longer than is taped`;
    const hider = hiddenBy(tip.at, sun);
    if (hider === null) return null;
    return `the tip lies in the shadow of ${hider === thing.label ? 'another part of it' : hider}`;
  }
}

const OUT_OF_GROUND = 'the shadow runs out of the known ground';

/** @throws BadInputError when it is no clock time, or one that the clocks leave out on that day. */
function readTime(date: string, time: string, timeZone: string): number {
  const utcMs = /^([01]\d|2[0-3]):[0-5]\d$/.test(time) ? utcOfClock(date, time, timeZone) : null;
  if (utcMs === null)
    throw new BadInputError(`A time is ${JSON.stringify(time)}; expected a clock time such as 09:40.`);
  if (clockOfUtc(utcMs, timeZone).time !== time)
    throw new BadInputError(`The clocks leave out ${time} on ${date}; expected a time that they show.`);
  return utcMs;
}

/** Every full hour from an hour after sunrise to an hour before sunset. */
function fullHours(date: string, timeZone: string, thing: StakedThing): { time: string; utcMs: number }[] {
  const [lonDeg, latDeg] = thing.middle;
  const isUp = (utcMs: number) => sunPosition(utcMs, latDeg, lonDeg).altitudeRad > RISEN_RAD;
  return Array.from({ length: 24 }, (_, hour) => `${String(hour).padStart(2, '0')}:00`).flatMap((time) => {
    const utcMs = utcOfClock(date, time, timeZone);
    if (utcMs === null || clockOfUtc(utcMs, timeZone).time !== time) return [];
    return [-HOUR_MS, 0, HOUR_MS].every((offsetMs) => isUp(utcMs + offsetMs)) ? [{ time, utcMs }] : [];
  });
}
