import type { Piece } from './barrier-pieces.ts';
import { acrossWind, alongWind, EDGE_M, type WindRay } from './shelter-tile.ts';

/** The extent of a connected group across one wind, and its two outermost corners. */
export interface GroupExtent {
  least: number;
  greatest: number;
  ends: { piece: Piece; vertex: number; alongM: number }[];
}

/** Extents and outermost corners of every group; of corners in line with the wind the one it meets first. */
export function groupExtents(pieces: readonly Piece[], ray: WindRay): GroupExtent[] {
  const extents: GroupExtent[] = [];
  for (const piece of pieces) {
    for (let vertex = 0; vertex < piece.heightM.length; vertex++) {
      const x = piece.xyM[2 * vertex];
      const y = piece.xyM[2 * vertex + 1];
      const s = acrossWind(ray, x, y);
      const corner = { piece, vertex, alongM: alongWind(ray, x, y) };
      const extent = extents[piece.group];
      if (!extent) {
        extents[piece.group] = { least: s, greatest: s, ends: [corner, corner] };
        continue;
      }
      const tiedLeast = Math.abs(s - extent.least) < EDGE_M && corner.alongM < extent.ends[0].alongM - EDGE_M;
      const tiedGreatest =
        Math.abs(s - extent.greatest) < EDGE_M && corner.alongM < extent.ends[1].alongM - EDGE_M;
      if (s < extent.least - EDGE_M || tiedLeast) extent.ends[0] = corner;
      if (s > extent.greatest + EDGE_M || tiedGreatest) extent.ends[1] = corner;
      extent.least = Math.min(extent.least, s);
      extent.greatest = Math.max(extent.greatest, s);
    }
  }
  return extents;
}
