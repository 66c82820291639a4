import { type GroundLie, lieOfGround } from '../geo/lie-of-ground.ts';
import { ringToLocal } from '../geo/rasterise.ts';
import type { FieldFeature } from '../site/records/field.ts';
import type { AppState } from './model.ts';
import { slopeOf } from './picture-raster.ts';

/** How the ground of a field lies; null where no ground is known. */
export function fieldGround(
  { ground, frame }: Pick<AppState, 'ground' | 'frame'>,
  { geometry }: FieldFeature,
): GroundLie | null {
  if (!ground) return null;
  const rings = geometry.coordinates.map((ring) => ringToLocal(frame, ring));
  return lieOfGround(ground, slopeOf(ground, frame.convergenceRad), rings);
}
