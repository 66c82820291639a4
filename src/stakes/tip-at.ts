import { type ShadowSun, type ShadowTip, shadowTip } from '../light/shadow-tip.ts';
import type { SiteOutdoors } from '../outside/site-outdoors.ts';
import { apparentAltitudeRad, sunPosition } from '../sun/position.ts';
import { gridAzimuth, type TrueAzimuthRad } from '../units/angle.ts';
import type { StakedThing } from './staked-thing.ts';

export interface SeenSun extends ShadowSun {
  readonly trueAzimuthRad: TrueAzimuthRad;
}

/** The sun as it is seen from the thing at an instant. */
export function seenSun(site: SiteOutdoors, thing: StakedThing, utcMs: number): SeenSun {
  const { altitudeRad, azimuthRad } = sunPosition(utcMs, thing.middle[1], thing.middle[0]);
  return {
    altitudeRad: apparentAltitudeRad(altitudeRad),
    azimuthRad: gridAzimuth(azimuthRad, site.frame.convergenceRad),
    trueAzimuthRad: azimuthRad,
  };
}

/** The tip of the thing's shadow at an instant, perhaps at another height than its own; null: there is none. */
export const tipAt = (
  site: SiteOutdoors,
  thing: StakedThing,
  sun: ShadowSun,
  alongM: number | null,
  longestM: number,
  heightM = thing.heightM,
): ShadowTip | null =>
  shadowTip(thing.casterAt(alongM, heightM), sun, {
    ground: site.ground,
    localPerM: thing.localPerM,
    longestM,
  });
