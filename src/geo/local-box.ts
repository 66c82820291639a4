import type { Frame, LocalXY, LonLat } from './frame.ts';
import { toLocal } from './frame.ts';

/** A box along the frame's axes, metres. */
export interface LocalBox {
  readonly west: number;
  readonly south: number;
  readonly east: number;
  readonly north: number;
}

/** The smallest box around points of the frame; null for none. */
export function boxAround(points: Iterable<LocalXY>): LocalBox | null {
  let west = Number.POSITIVE_INFINITY;
  let south = Number.POSITIVE_INFINITY;
  let east = Number.NEGATIVE_INFINITY;
  let north = Number.NEGATIVE_INFINITY;
  for (const [xM, yM] of points) {
    west = Math.min(west, xM);
    east = Math.max(east, xM);
    south = Math.min(south, yM);
    north = Math.max(north, yM);
  }
  return west <= east ? { west, south, east, north } : null;
}

/** The smallest box around places; null for none. */
export const localBoxOf = (frame: Frame, places: Iterable<LonLat>): LocalBox | null =>
  boxAround(Array.from(places, (place) => toLocal(frame, place)));

export const widenedBox = (box: LocalBox, byM: number): LocalBox => ({
  west: box.west - byM,
  south: box.south - byM,
  east: box.east + byM,
  north: box.north + byM,
});
