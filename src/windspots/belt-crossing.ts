import type { Barrier } from '../crowns/barrier.ts';
import type { LocalXY } from '../geo/frame.ts';
import { acrossWind, alongWind, type WindRay } from '../wind/shelter-tile.ts';
import { lineOf } from './scene-on-day.ts';

/** Where a wind that arrives at a spot crosses the middle line of a belt. Local metres. */
export interface BeltCrossing {
  readonly at: LocalXY;
  /** Along the wind from there to the spot; negative where the belt stands downwind of the spot. */
  readonly distanceM: number;
  /** Between the wind and square to the leg that is crossed. */
  readonly offSquareDeg: number;
  /** Across the wind from the spot's ray to the nearer end of the belt. */
  readonly toEndM: number;
}

/** The crossing nearest upwind of a spot, else the nearest downwind; null: the wind passes the belt by. */
export function beltCrossing(belt: Barrier, ray: WindRay, [x, y]: LocalXY): BeltCrossing | null {
  const line = lineOf(belt);
  const [s, t] = [acrossWind(ray, x, y), alongWind(ray, x, y)];
  const ends = [line[0], line[line.length - 1]].map(([ex, ey]) => Math.abs(acrossWind(ray, ex, ey) - s));
  const found: BeltCrossing[] = [];
  for (let i = 1; i < line.length; i++) {
    const [[ax, ay], [bx, by]] = [line[i - 1], line[i]];
    const [sa, sb] = [acrossWind(ray, ax, ay), acrossWind(ray, bx, by)];
    if (sa === sb || (s - sa) * (s - sb) > 0) continue;
    const share = (s - sa) / (sb - sa);
    const at: LocalXY = [ax + share * (bx - ax), ay + share * (by - ay)];
    const cosine = Math.min(1, Math.abs(sb - sa) / Math.hypot(bx - ax, by - ay));
    found.push({
      at,
      distanceM: t - alongWind(ray, at[0], at[1]),
      offSquareDeg: (Math.acos(cosine) * 180) / Math.PI,
      toEndM: Math.min(...ends),
    });
  }
  const upwind = found.filter(({ distanceM }) => distanceM >= 0);
  const nearest = (crossings: readonly BeltCrossing[]) =>
    crossings.reduce<BeltCrossing | null>(
      (best, each) => (best && Math.abs(best.distanceM) <= Math.abs(each.distanceM) ? best : each),
      null,
    );
  return nearest(upwind) ?? nearest(found);
}
