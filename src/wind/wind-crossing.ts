import type { Barrier } from '../crowns/barrier.ts';
import { distanceToRing } from './footprint.ts';
import { acrossWind, alongWind, type WindRay } from './shelter-tile.ts';
import { DOWNWIND_REACH_H, UPWIND_REACH_H } from './weps.ts';

/** Where a wind that blows over a spot crosses a barrier. */
export interface WindCrossing {
  /** Along the wind from the crossing to the spot, metres; negative where the barrier stands downwind; 0 inside an area. */
  readonly distanceM: number;
  readonly heightM: number;
}

/** Crossings of the wind's line through (x, y) with a barrier's edges or centreline, by distance from the spot. */
function crossingsOf(barrier: Barrier, ray: WindRay, x: number, y: number): WindCrossing[] {
  const { xyM, heightM, shape } = barrier;
  const count = heightM.length;
  const s = acrossWind(ray, x, y);
  const t = alongWind(ray, x, y);
  const found: WindCrossing[] = [];
  for (let i = 0; i < (shape === 'area' ? count : count - 1); i++) {
    const j = (i + 1) % count;
    const si = acrossWind(ray, xyM[2 * i], xyM[2 * i + 1]);
    const sj = acrossWind(ray, xyM[2 * j], xyM[2 * j + 1]);
    if (si === sj || (s - si) * (s - sj) > 0) continue;
    const q = (s - si) / (sj - si);
    const ti = alongWind(ray, xyM[2 * i], xyM[2 * i + 1]);
    const tj = alongWind(ray, xyM[2 * j], xyM[2 * j + 1]);
    found.push({
      distanceM: t - (ti + q * (tj - ti)),
      heightM: heightM[i] + q * (heightM[j] - heightM[i]),
    });
  }
  return found;
}

/**
 * The crossing through which a barrier can act on a spot: within 35 heights upwind or 5 downwind of it, or around it;
 * the nearest, counted in heights. Null where the wind passes it by or it is out of reach.
 */
export function windCrossing(barrier: Barrier, ray: WindRay, x: number, y: number): WindCrossing | null {
  const crossings = crossingsOf(barrier, ray, x, y).filter(({ heightM }) => heightM > 0);
  if (barrier.shape === 'area' && distanceToRing(x, y, barrier.xyM) === 0) {
    const tallest = crossings.reduce((top, { heightM }) => Math.max(top, heightM), 0);
    return { distanceM: 0, heightM: tallest };
  }
  let nearest: WindCrossing | null = null;
  for (const crossing of crossings) {
    const inHeights = crossing.distanceM / crossing.heightM;
    if (inHeights > DOWNWIND_REACH_H || inHeights <= -UPWIND_REACH_H) continue;
    if (!nearest || Math.abs(inHeights) < Math.abs(nearest.distanceM / nearest.heightM)) nearest = crossing;
  }
  return nearest;
}

/** Whether a barrier is near enough to a spot to act on it in any wind. */
export function mayReach(barrier: Barrier, x: number, y: number): boolean {
  const reachM = DOWNWIND_REACH_H * barrier.heightM.reduce((top, heightM) => Math.max(top, heightM), 0);
  return distanceToRing(x, y, barrier.xyM) <= reachM;
}
