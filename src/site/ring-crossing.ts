import type { Position } from 'geojson';

/** What is wrong with a ring, and where; null when nothing is. */
export interface RingFault {
  readonly fault: 'crosses itself' | 'has no area' | 'is not closed';
  readonly at: Position;
}

/**
 * Looks for what makes a ring useless as a boundary. The ring is closed (first position repeated at the end).
 * Positions are taken as a plane, which is right for crossings at the size of a field.
 */
export function ringFault(ring: readonly Position[]): RingFault | null {
  const first = ring[0];
  const last = ring[ring.length - 1];
  if (first[0] !== last[0] || first[1] !== last[1]) return { fault: 'is not closed', at: last };
  const points = withoutRepeats(ring);
  // Twice the area, relative to the first corner so that degrees keep their digits.
  let doubleArea = 0;
  let extent = 0;
  for (let i = 0; i < points.length; i++) {
    const a = points[i];
    const b = points[(i + 1) % points.length];
    doubleArea += (a[0] - first[0]) * (b[1] - first[1]) - (b[0] - first[0]) * (a[1] - first[1]);
    extent = Math.max(extent, Math.abs(a[0] - first[0]), Math.abs(a[1] - first[1]));
  }
  const crossing = firstCrossing(points, first);
  if (crossing) return { fault: 'crosses itself', at: crossing };
  if (points.length < 3 || Math.abs(doubleArea) <= 1e-9 * extent * extent)
    return { fault: 'has no area', at: first };
  return null;
}

/** The corners of a closed ring, each once: neither the closing one nor doubles in a row. */
function withoutRepeats(ring: readonly Position[]): Position[] {
  const points: Position[] = [];
  for (const p of ring.slice(0, -1)) {
    const before = points[points.length - 1];
    if (!before || before[0] !== p[0] || before[1] !== p[1]) points.push(p);
  }
  while (points.length > 1 && samePlace(points[0], points[points.length - 1])) points.pop();
  return points;
}

const samePlace = (a: Position, b: Position): boolean => a[0] === b[0] && a[1] === b[1];

/**
 * A place where two sides that are not neighbours meet, touching included. Sides are walked from west to east, so that each is
 * compared only with those that begin before it ends.
 */
function firstCrossing(points: readonly Position[], origin: Position): Position | null {
  const n = points.length;
  const xy = points.map((p) => [p[0] - origin[0], p[1] - origin[1]] as const);
  const westOf = (i: number) => Math.min(xy[i][0], xy[(i + 1) % n][0]);
  const eastward = xy.map((_, i) => i).sort((i, k) => westOf(i) - westOf(k));
  for (let p = 0; p < n; p++) {
    const i = eastward[p];
    const a = xy[i];
    const b = xy[(i + 1) % n];
    const eastEnd = Math.max(a[0], b[0]);
    for (let q = p + 1; q < n && westOf(eastward[q]) <= eastEnd; q++) {
      const k = eastward[q];
      if ((i + 1) % n === k || (k + 1) % n === i) continue;
      const c = xy[k];
      const d = xy[(k + 1) % n];
      if (Math.max(c[1], d[1]) < Math.min(a[1], b[1]) || Math.min(c[1], d[1]) > Math.max(a[1], b[1]))
        continue;
      if (side(a, b, c) * side(a, b, d) <= 0 && side(c, d, a) * side(c, d, b) <= 0)
        return meetingPlace(a, b, c, d).map((v, axis) => v + origin[axis]);
    }
  }
  return null;
}

type XY = readonly [number, number];
const side = (a: XY, b: XY, p: XY): number =>
  Math.sign((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]));

function meetingPlace(a: XY, b: XY, c: XY, d: XY): number[] {
  const cross = (b[0] - a[0]) * (d[1] - c[1]) - (b[1] - a[1]) * (d[0] - c[0]);
  if (cross === 0) return [c[0], c[1]];
  const t = ((c[0] - a[0]) * (d[1] - c[1]) - (c[1] - a[1]) * (d[0] - c[0])) / cross;
  return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
}
