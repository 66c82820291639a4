/**
 * How far the model missed what was seen outside, and which one thing set right would explain it best. Weighted least
 * squares (Gauss-Newton, derivatives by differences) for each explanation alone; between explanations by the sum of
 * squares plus a price of 4 for each number that it is free to choose (stricter than Akaike's 2: few readings).
 */

import { toLocal } from '../geo/frame.ts';
import { awayFromSun } from '../light/shadow-tip.ts';
import type { SiteOutdoors } from '../outside/site-outdoors.ts';
import type { FeatureId } from '../site/document.ts';
import { utcOfClock } from '../sun/clock-time.ts';
import { BadInputError } from '../units/bad-input.ts';
import { type Change, fitted, NONE, PRICE, type Seen, squares } from './fit-change.ts';
import type { ShadowReading } from './readings.ts';
import { FURTHEST_M } from './stake-plan.ts';
import { type StakedThing, stakedThing } from './staked-thing.ts';
import { seenSun, tipAt } from './tip-at.ts';

/** How well a tip is placed by eye and tape at best, m; half the half-shade comes on top. Common practice, no source. */
const TAPING_M = 0.1;

export interface ScoredReading {
  readonly reading: ShadowReading;
  /** Seen minus computed: beyond (short below zero) and to the right (left below zero), away from the sun, m. */
  readonly beyondM: number;
  readonly rightM: number;
  /** Length of the computed shadow, m. */
  readonly lengthM: number;
  /** The height with which this reading alone would agree best, m. */
  readonly fitsHeightM: number;
}

/** The one change that explains the readings best; errors are one standard error. */
export type Cause =
  | { readonly what: 'nothing' }
  | { readonly what: 'height'; readonly byM: number; readonly errorM: number }
  /** The sun stood where the clock would have shown it so much later (earlier below zero). */
  | { readonly what: 'clock'; readonly slowMinutes: number; readonly orNorthDeg: number | null }
  /** Shadows lie turned clockwise by so much. */
  | { readonly what: 'north'; readonly turnDeg: number; readonly orSlowMinutes: number | null }
  | { readonly what: 'place'; readonly eastM: number; readonly northM: number };

export interface StakeScore {
  readonly label: string;
  readonly kind: StakedThing['kind'];
  readonly readings: readonly ScoredReading[];
  /** Readings that cannot be scored, and why. */
  readonly left: readonly { readonly reading: ShadowReading; readonly why: string }[];
  readonly meanBeyondM: number;
  readonly meanRightM: number;
  /** Nine readings of ten lie within this of where the tip was computed, m. */
  readonly within90M: number;
  readonly furthestM: number;
  readonly cause: Cause;
  /** Where height explains the readings best: the height at the end of the season of `measuredYear`. */
  readonly height: {
    readonly heightM: number;
    readonly errorM: number;
    readonly measuredYear: number;
  } | null;
}

function seenReading(site: SiteOutdoors, thing: StakedThing, reading: ShadowReading): Seen | string {
  const utcMs = utcOfClock(reading.date, reading.time, site.document.site.timeZone);
  if (utcMs === null) return 'its day or time cannot be read';
  const own = seenSun(site, thing, utcMs);
  const tip = tipAt(site, thing, own, reading.alongM, FURTHEST_M);
  if (!tip) return 'the model has no tip at that time';
  const [ex, ey] = awayFromSun(own);
  const [x, y] = toLocal(site.frame, reading.lonLat);
  const sideways = thing.kind === 'belt' ? 0 : 1;
  const scale = thing.localPerM;
  const convergence = site.frame.convergenceRad;
  const missUnder = (change: Change): readonly [number, number] | null => {
    const sun = change.minutes === 0 ? own : seenSun(site, thing, utcMs + change.minutes * 60_000);
    const at = tipAt(site, thing, sun, reading.alongM, FURTHEST_M, thing.heightM + change.heightM);
    if (!at) return null;
    const foot = thing.kind === 'tree' ? toLocal(site.frame, thing.middle) : [at.cast.xM, at.cast.yM];
    const [dx, dy] = [at.at.xM - foot[0], at.at.yM - foot[1]];
    const [cos, sin] = [Math.cos(change.turnRad), Math.sin(change.turnRad)];
    // East and north are true; the frame's axes are turned by the grid convergence.
    const [cosG, sinG] = [Math.cos(convergence), Math.sin(convergence)];
    const px = foot[0] + dx * cos + dy * sin + (change.eastM * cosG - change.northM * sinG) * scale;
    const py = foot[1] - dx * sin + dy * cos + (change.eastM * sinG + change.northM * cosG) * scale;
    const [mx, my] = [(x - px) / scale, (y - py) / scale];
    // The edge of a belt's shadow is a line: how far aside it was looked at says nothing.
    return [mx * ex + my * ey, sideways * (mx * ey - my * ex)];
  };
  const spreadM = Math.hypot(TAPING_M, Number.isFinite(tip.fuzzyM) ? tip.fuzzyM / 2 : tip.lengthM);
  return { reading, thing, lengthM: tip.lengthM, weight: 1 / spreadM ** 2, missUnder };
}

/** @throws BadInputError when the thing is not there any more. */
export function scoreReadings(
  site: SiteOutdoors,
  id: FeatureId,
  readings: readonly ShadowReading[],
): StakeScore {
  const things = new Map<string, StakedThing>();
  const seen: Seen[] = [];
  const left: { reading: ShadowReading; why: string }[] = [];
  for (const reading of readings) {
    try {
      const thing = things.get(reading.date) ?? stakedThing(site, id, reading.date);
      things.set(reading.date, thing);
      const found = seenReading(site, thing, reading);
      if (typeof found === 'string') left.push({ reading, why: found });
      else seen.push(found);
    } catch (reason) {
      if (!(reason instanceof BadInputError)) throw reason;
      left.push({ reading, why: reason.message });
    }
  }
  const scored = seen.map((each): ScoredReading => {
    const { reading, thing, lengthM, missUnder } = each;
    const [beyondM, rightM] = missUnder(NONE) ?? [Number.NaN, Number.NaN];
    const fitsHeightM = thing.heightM + fitted([each], ['heightM']).change.heightM;
    return { reading, beyondM, rightM, lengthM, fitsHeightM };
  });
  const misses = scored.map(({ beyondM, rightM }) => Math.hypot(beyondM, rightM)).sort((a, b) => a - b);
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const last = seen[seen.length - 1];
  const lastThing = last ? things.get(last.reading.date) : undefined;
  const cause = causeOf(seen, scored);
  return {
    label: (lastThing ?? [...things.values()][0])?.label ?? '',
    kind: (lastThing ?? [...things.values()][0])?.kind ?? 'tree',
    readings: scored,
    left,
    meanBeyondM: mean(scored.map(({ beyondM }) => beyondM)),
    meanRightM: mean(scored.map(({ rightM }) => rightM)),
    within90M: misses[Math.ceil(0.9 * misses.length) - 1] ?? Number.NaN,
    furthestM: misses[misses.length - 1] ?? Number.NaN,
    cause,
    height:
      cause.what === 'height' && lastThing
        ? {
            heightM: lastThing.heightM + cause.byM,
            errorM: cause.errorM,
            measuredYear: lastThing.heightYear,
          }
        : null,
  };
}

function causeOf(seen: readonly Seen[], scored: readonly ScoredReading[]): Cause {
  if (seen.length === 0) return { what: 'nothing' };
  const oneWay = scored.every(({ rightM }) => rightM > 0) || scored.every(({ rightM }) => rightM < 0);
  const height = fitted(seen, ['heightM']);
  const clock = oneWay ? fitted(seen, ['minutes']) : null;
  const north = oneWay ? fitted(seen, ['turnRad']) : null;
  const place = seen.length >= 3 ? fitted(seen, ['eastM', 'northM']) : null;
  const least = Math.min(
    squares(seen, NONE),
    ...[height, clock, north, place].map((fit) => fit?.score ?? Number.POSITIVE_INFINITY),
  );
  if (height.score === least) return { what: 'height', byM: height.change.heightM, errorM: height.error };
  if (clock && north && (clock.score === least || north.score === least)) {
    const alike = Math.abs(clock.score - north.score) < PRICE;
    const slowMinutes = clock.change.minutes;
    const turnDeg = (north.change.turnRad * 180) / Math.PI;
    return clock.score === least
      ? { what: 'clock', slowMinutes, orNorthDeg: alike ? turnDeg : null }
      : { what: 'north', turnDeg, orSlowMinutes: alike ? slowMinutes : null };
  }
  if (place?.score === least)
    return { what: 'place', eastM: place.change.eastM, northM: place.change.northM };
  return { what: 'nothing' };
}
