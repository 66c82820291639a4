import Delaunator from 'delaunator';
import type { Grid } from '../numeric/grid.ts';
import { BadInputError } from '../units/bad-input.ts';
import type { Frame, LonLat } from './frame.ts';
import { toLocal } from './frame.ts';
import { gridOfCoarseCells } from './ground-from-plane.ts';
import type { LocalBox } from './local-box.ts';

/** A place whose ground level is known. */
export interface SpotLevel {
  readonly lonLat: LonLat;
  readonly elevationM: number;
}

/**
 * Ground through three or more spot levels: linear on the Delaunay triangles between them; outside them the plane of
 * least squares, raised or lowered to meet the triangles' edge, so that no step appears where the levels end.
 * @throws BadInputError for fewer than three different places or places on one line.
 */
export function groundFromSpots(spots: readonly SpotLevel[], frame: Frame, box: LocalBox): Grid {
  const points = distinctPoints(spots, frame);
  if (points.length < 3) {
    throw new BadInputError(
      `${points.length} spot level(s) at different places were given: the ground needs at least 3.`,
    );
  }
  const plane = leastSquaresPlane(points);
  if (!plane) {
    throw new BadInputError(
      'The spot levels lie on one line: the ground needs at least one level beside it.',
    );
  }
  const { triangles, hull } = Delaunator.from(
    points,
    (p) => p.x,
    (p) => p.y,
  );
  return gridOfCoarseCells(
    box,
    (xM, yM) =>
      withinTriangles(points, triangles, xM, yM) ?? plane(xM, yM) + hullResidual(points, hull, plane, xM, yM),
    200,
  );
}

interface Point {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}
type Plane = (xM: number, yM: number) => number;

/** Levels within 1 cm of each other are one place, at their mean. */
function distinctPoints(spots: readonly SpotLevel[], frame: Frame): Point[] {
  const places = new Map<string, { x: number; y: number; sum: number; count: number }>();
  spots.forEach((spot, i) => {
    if (!Number.isFinite(spot.elevationM)) {
      throw new BadInputError(
        `Spot level ${i + 1}: the elevation is ${spot.elevationM}, expected a number in metres.`,
      );
    }
    const [x, y] = toLocal(frame, spot.lonLat);
    const key = `${Math.round(x * 100)} ${Math.round(y * 100)}`;
    const place = places.get(key) ?? { x, y, sum: 0, count: 0 };
    place.sum += spot.elevationM;
    place.count++;
    places.set(key, place);
  });
  return [...places.values()].map(({ x, y, sum, count }) => ({ x, y, z: sum / count }));
}

/** Plane of least squares through the points; null when they lie on one line (to 1 in 1000 of their spread). */
function leastSquaresPlane(points: readonly Point[]): Plane | null {
  const n = points.length;
  const mx = points.reduce((s, p) => s + p.x, 0) / n;
  const my = points.reduce((s, p) => s + p.y, 0) / n;
  const mz = points.reduce((s, p) => s + p.z, 0) / n;
  let xx = 0;
  let yy = 0;
  let xy = 0;
  let xz = 0;
  let yz = 0;
  for (const p of points) {
    xx += (p.x - mx) ** 2;
    yy += (p.y - my) ** 2;
    xy += (p.x - mx) * (p.y - my);
    xz += (p.x - mx) * (p.z - mz);
    yz += (p.y - my) * (p.z - mz);
  }
  const determinant = xx * yy - xy * xy;
  if (determinant <= 1e-6 * (xx + yy) ** 2) return null;
  const perX = (xz * yy - yz * xy) / determinant;
  const perY = (yz * xx - xz * xy) / determinant;
  return (xM, yM) => mz + perX * (xM - mx) + perY * (yM - my);
}

function withinTriangles(
  points: readonly Point[],
  triangles: Uint32Array,
  xM: number,
  yM: number,
): number | null {
  for (let t = 0; t < triangles.length; t += 3) {
    const a = points[triangles[t]];
    const b = points[triangles[t + 1]];
    const c = points[triangles[t + 2]];
    const twice = (b.x - a.x) * (c.y - a.y) - (c.x - a.x) * (b.y - a.y);
    const wb = ((xM - a.x) * (c.y - a.y) - (c.x - a.x) * (yM - a.y)) / twice;
    const wc = ((b.x - a.x) * (yM - a.y) - (xM - a.x) * (b.y - a.y)) / twice;
    if (wb >= -1e-9 && wc >= -1e-9 && wb + wc <= 1 + 1e-9) return a.z + wb * (b.z - a.z) + wc * (c.z - a.z);
  }
  return null;
}

/** Triangles less plane at the nearest point of the hull: what keeps the ground unbroken across the edge. */
function hullResidual(
  points: readonly Point[],
  hull: Uint32Array,
  plane: Plane,
  xM: number,
  yM: number,
): number {
  let nearest = Number.POSITIVE_INFINITY;
  let residual = 0;
  for (let i = 0; i < hull.length; i++) {
    const a = points[hull[i]];
    const b = points[hull[(i + 1) % hull.length]];
    const dx = b.x - a.x;
    const dy = b.y - a.y;
    const along = Math.min(1, Math.max(0, ((xM - a.x) * dx + (yM - a.y) * dy) / (dx * dx + dy * dy)));
    const px = a.x + along * dx;
    const py = a.y + along * dy;
    const distance = Math.hypot(xM - px, yM - py);
    if (distance < nearest) {
      nearest = distance;
      residual = a.z + along * (b.z - a.z) - plane(px, py);
    }
  }
  return residual;
}
