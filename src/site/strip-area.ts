import type { MultiPolygon, Polygon, Position } from 'geojson';
import { areasTogether } from '../geo/polygon.ts';
import type { XY } from './plane-geometry.ts';

/** Corners of a whole turn in a round join. */
const JOIN_CORNERS = 24;

/**
 * The ground under a line with a width: flat at its ends, round at its bends. Local metres in and out; null for a line
 * without length or a strip without width.
 */
export function stripArea(line: readonly XY[], halfWidthM: number): Polygon | MultiPolygon | null {
  if (!(halfWidthM > 0)) return null;
  const pieces: Polygon[] = [];
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1], line[i]];
    const lengthM = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (lengthM === 0) continue;
    const [ex, ey] = [((b[0] - a[0]) / lengthM) * halfWidthM, ((b[1] - a[1]) / lengthM) * halfWidthM];
    const legs: Position[] = [
      [a[0] + ey, a[1] - ex],
      [b[0] + ey, b[1] - ex],
      [b[0] - ey, b[1] + ex],
      [a[0] - ey, a[1] + ex],
    ];
    pieces.push({ type: 'Polygon', coordinates: [[...legs, legs[0]]] });
    if (i + 1 < line.length) pieces.push(discAround(b, halfWidthM));
  }
  return areasTogether(pieces);
}

function discAround([x, y]: XY, radiusM: number): Polygon {
  const ring = Array.from({ length: JOIN_CORNERS }, (_, i): Position => {
    const turn = (2 * Math.PI * i) / JOIN_CORNERS;
    return [x + radiusM * Math.cos(turn), y + radiusM * Math.sin(turn)];
  });
  return { type: 'Polygon', coordinates: [[...ring, ring[0]]] };
}
