import { featureCollection, polygon, union } from '@turf/turf';
import { counterClockwise, doubleArea, type Ring } from './convex.ts';
import { polygonPieces } from './polygon-pieces.ts';

type XY = readonly [number, number];

/** Corners of a quarter turn in a round join. */
const ARC_STEP_RAD = Math.PI / 8;

/** Drops repeated points. */
function cleanLine(line: readonly XY[]): XY[] {
  return line.filter((p, i) => i === 0 || Math.hypot(p[0] - line[i - 1][0], p[1] - line[i - 1][1]) > 1e-6);
}

interface Leg {
  readonly from: XY;
  readonly to: XY;
  readonly dx: number;
  readonly dy: number;
  readonly lengthM: number;
}

function legsOf(line: readonly XY[]): Leg[] {
  return line.slice(1).map((to, i) => {
    const from = line[i];
    const lengthM = Math.hypot(to[0] - from[0], to[1] - from[1]);
    return { from, to, dx: (to[0] - from[0]) / lengthM, dy: (to[1] - from[1]) / lengthM, lengthM };
  });
}

/** Turning angle from one leg to the next, radians, left positive. */
const turnBetween = (a: Leg, b: Leg): number =>
  Math.atan2(a.dx * b.dy - a.dy * b.dx, a.dx * b.dx + a.dy * b.dy);

/** Offset of a leg's end to its left (+1) or right (-1). */
const offsetPoint = (p: XY, leg: Leg, side: number, halfM: number): [number, number] => [
  p[0] - side * leg.dy * halfM,
  p[1] + side * leg.dx * halfM,
];

/** The wedge that rounds the outside of a bend. */
function bendWedge(p: XY, before: Leg, turnRad: number, halfM: number): Ring {
  const outer = turnRad > 0 ? -1 : 1;
  const startRad = Math.atan2(outer * before.dx, -outer * before.dy);
  const steps = Math.max(1, Math.ceil(Math.abs(turnRad) / ARC_STEP_RAD));
  const arc = Array.from({ length: steps + 1 }, (_, i): [number, number] => {
    const a = startRad + (turnRad * i) / steps;
    return [p[0] + halfM * Math.cos(a), p[1] + halfM * Math.sin(a)];
  });
  return counterClockwise([[p[0], p[1]], ...arc]);
}

/**
 * True when neighbouring legs can simply be mitred on the inside of each bend: no bend eats up a leg and no two
 * other legs come within a width of each other.
 */
function isPlain(legs: readonly Leg[], halfM: number): boolean {
  for (let i = 1; i < legs.length; i++) {
    const turn = Math.abs(turnBetween(legs[i - 1], legs[i]));
    if (turn > 2.4) return false;
    if (halfM * Math.tan(turn / 2) > 0.45 * Math.min(legs[i - 1].lengthM, legs[i].lengthM)) return false;
  }
  for (let i = 0; i < legs.length; i++)
    for (let k = i + 2; k < legs.length; k++) if (legDistance(legs[i], legs[k]) < 2 * halfM) return false;
  return true;
}

function legDistance(a: Leg, b: Leg): number {
  const crosses = (p: XY, q: XY, r: XY) => (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
  if (
    crosses(a.from, a.to, b.from) * crosses(a.from, a.to, b.to) < 0 &&
    crosses(b.from, b.to, a.from) * crosses(b.from, b.to, a.to) < 0
  )
    return 0;
  const toLeg = (p: XY, leg: Leg) => {
    const t = (p[0] - leg.from[0]) * leg.dx + (p[1] - leg.from[1]) * leg.dy;
    const s = Math.min(leg.lengthM, Math.max(0, t));
    return Math.hypot(p[0] - leg.from[0] - s * leg.dx, p[1] - leg.from[1] - s * leg.dy);
  };
  return Math.min(toLeg(a.from, b), toLeg(a.to, b), toLeg(b.from, a), toLeg(b.to, a));
}

function plainPieces(legs: readonly Leg[], halfM: number): Ring[] {
  const pieces: Ring[] = [];
  legs.forEach((leg, i) => {
    const turnIn = i > 0 ? turnBetween(legs[i - 1], leg) : 0;
    const turnOut = i + 1 < legs.length ? turnBetween(leg, legs[i + 1]) : 0;
    // At each end: the vertex on the line itself, and on the inside of a bend the mitre, set back along the leg.
    const corner = (p: XY, side: number, turn: number, back: number): [number, number] => {
      const q = offsetPoint(p, leg, side, halfM);
      const inside = turn > 0 ? 1 : -1;
      if (turn === 0 || side !== inside) return q;
      const setBackM = halfM * Math.tan(Math.abs(turn) / 2) * back;
      return [q[0] + leg.dx * setBackM, q[1] + leg.dy * setBackM];
    };
    pieces.push([
      corner(leg.from, -1, turnIn, 1),
      corner(leg.to, -1, turnOut, -1),
      ...(turnOut === 0 ? [] : [[leg.to[0], leg.to[1]] as [number, number]]),
      corner(leg.to, 1, turnOut, -1),
      corner(leg.from, 1, turnIn, 1),
      ...(turnIn === 0 ? [] : [[leg.from[0], leg.from[1]] as [number, number]]),
    ]);
    if (Math.abs(turnIn) > 1e-9) pieces.push(bendWedge(leg.from, legs[i - 1], turnIn, halfM));
  });
  return pieces;
}

const closed = (ring: Ring): [number, number][] => [...ring, ring[0]].map(([x, y]) => [x, y]);

/** The outline of pieces that touch or overlap: polygons of rings, outer first, first vertex not repeated. */
export function outlineOf(pieces: readonly Ring[]): Ring[][] {
  const polygons = pieces.filter((ring) => doubleArea(ring) > 0).map((ring) => polygon([closed(ring)]));
  if (polygons.length === 0) return [];
  const merged = polygons.length === 1 ? polygons[0] : union(featureCollection(polygons));
  if (!merged) return [];
  const { geometry } = merged;
  const shapes = geometry.type === 'Polygon' ? [geometry.coordinates] : geometry.coordinates;
  return shapes.map((rings) =>
    rings.map((ring) => ring.slice(0, -1).map(([x, y]) => [x, y] as [number, number])),
  );
}

/**
 * A line with a width, flat at its ends and round at its bends, as convex pieces that do not overlap.
 * @param line local metres.
 */
export function stripPieces(line: readonly XY[], widthM: number): Ring[] {
  const legs = legsOf(cleanLine(line));
  const halfM = widthM / 2;
  if (legs.length === 0) return [];
  if (isPlain(legs, halfM)) return plainPieces(legs, halfM);
  // A strip that folds back on itself: take the outline of everything and cut that up.
  const raw: Ring[] = [];
  legs.forEach((leg, i) => {
    raw.push([
      offsetPoint(leg.from, leg, -1, halfM),
      offsetPoint(leg.to, leg, -1, halfM),
      offsetPoint(leg.to, leg, 1, halfM),
      offsetPoint(leg.from, leg, 1, halfM),
    ]);
    const turn = i > 0 ? turnBetween(legs[i - 1], leg) : 0;
    if (Math.abs(turn) > 1e-9) raw.push(bendWedge(leg.from, legs[i - 1], turn, halfM));
  });
  return outlineOf(raw).flatMap((rings) => polygonPieces(rings));
}
