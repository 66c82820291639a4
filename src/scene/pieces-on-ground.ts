import type { Grid } from '../numeric/grid.ts';
import { cutByLine, doubleArea, longestExtent, middleOf, type Ring } from './convex.ts';
import { groundAt } from './ground-at.ts';

/** elevation = a + b * x + c * y. */
export interface GroundPlane {
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

export interface GroundedPiece {
  readonly ring: Ring;
  readonly plane: GroundPlane;
}

/** A piece is cut until its ground is as even as this (m)… */
const EVEN_M = 0.15;
/** …or until it is no longer than this (m). */
const SHORTEST_M = 4;

/** Corners, middles of the sides and the centre. */
function samplePoints(ring: Ring): [number, number][] {
  const points: [number, number][] = [middleOf(ring)];
  ring.forEach((p, i) => {
    const q = ring[(i + 1) % ring.length];
    points.push([p[0], p[1]], [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2]);
  });
  return points;
}

/** Least-squares plane through the ground at the sample points, and its largest miss (m). */
function fitPlane(ring: Ring, ground: Grid): { plane: GroundPlane; missM: number } {
  const points = samplePoints(ring);
  const [mx, my] = middleOf(ring);
  const levels = points.map(([x, y]) => groundAt(ground, x, y));
  const mz = levels.reduce((sum, z) => sum + z, 0) / levels.length;
  let sx = 0;
  let sy = 0;
  for (const [x, y] of points) {
    sx += x - mx;
    sy += y - my;
  }
  const cx = mx + sx / points.length;
  const cy = my + sy / points.length;
  let xx = 0;
  let xy = 0;
  let yy = 0;
  let xz = 0;
  let yz = 0;
  points.forEach(([x, y], i) => {
    const u = x - cx;
    const v = y - cy;
    const w = levels[i] - mz;
    xx += u * u;
    xy += u * v;
    yy += v * v;
    xz += u * w;
    yz += v * w;
  });
  const det = xx * yy - xy * xy;
  // A sliver has no slope across itself that could be told from its points.
  const tiny = det < 1e-6 * Math.max(1e-12, xx * yy);
  const b = tiny ? 0 : (xz * yy - yz * xy) / det;
  const c = tiny ? 0 : (yz * xx - xz * xy) / det;
  const plane = { a: mz - b * cx - c * cy, b, c };
  let missM = 0;
  points.forEach(([x, y], i) => {
    missM = Math.max(missM, Math.abs(plane.a + b * x + c * y - levels[i]));
  });
  return { plane, missM };
}

/** Cuts a convex piece until each part stands on ground that is even enough for one plane. */
export function piecesOnGround(ring: Ring, ground: Grid): GroundedPiece[] {
  const { plane, missM } = fitPlane(ring, ground);
  const extent = longestExtent(ring);
  if (missM <= EVEN_M || extent.lengthM <= SHORTEST_M) return [{ ring, plane }];
  const [mx, my] = middleOf(ring);
  const halves = cutByLine(ring, mx, my, -extent.dy, extent.dx);
  return halves.filter((half) => doubleArea(half) > 1e-6).flatMap((half) => piecesOnGround(half, ground));
}
