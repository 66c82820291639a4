import { type LonLat, toLocal } from '../geo/frame.ts';
import { distanceM } from '../geo/geodesic.ts';
import type { FindablePoint } from '../outside/findable-points.ts';
import type { SiteOutdoors } from '../outside/site-outdoors.ts';
import type { SceneOnDay } from './scene-on-day.ts';
import { shareAt } from './share-at.ts';
import type { OpenPlace, SpotWind } from './spot-plan.ts';

/** Where the model has at least this share of open wind, and no crest or hollow that makes it much more. */
const OPEN_SHARE = { least: 0.97, most: 1.08 } as const;

/** The nearest point that can be found outside in open wind, for the other meter; null: the model knows none. */
export function openPlace(
  { frame }: Pick<SiteOutdoors, 'frame'>,
  day: SceneOnDay,
  points: readonly FindablePoint[],
  wind: SpotWind,
  near: LonLat,
): OpenPlace | null {
  const byDistance = points
    .map((point) => ({ point, awayM: distanceM(near, point.lonLat) }))
    .sort((a, b) => a.awayM - b.awayM);
  for (const { point } of byDistance) {
    const share = shareAt(day, toLocal(frame, point.lonLat), wind);
    if (share >= OPEN_SHARE.least && share <= OPEN_SHARE.most)
      return { words: `${point.letter}, ${point.words}`, lonLat: point.lonLat, share };
  }
  return null;
}
