import type { Barrier } from '../crowns/barrier.ts';
import { boundsOf, distanceToRing, footprintsMeet, nearestOnSegment, stripRing } from './footprint.ts';

/** A gap narrower than this is closed: nobody draws a gateway that small. Our guess. */
const CLOSED_GAP_M = 0.5;
/** A thing joined to one more than this many times its height does not share its length. Our guess. */
const SHARED_LENGTH_HEIGHT_RATIO = 2;
/** Below this two points are one. */
const SAME_POINT_M = 1e-6;

/** One straight piece of a line, or a whole area. */
export interface Piece {
  readonly barrier: Barrier;
  /** x, y of the two ends of a line's piece, or of an area's ring, metres. */
  readonly xyM: Float64Array;
  readonly heightM: Float64Array;
  /** Pieces of one group touch and present one connected length to the wind. Numbered from 0 without holes. */
  readonly group: number;
  /** It closes a small gap between two things, and moves with either. */
  readonly bridge: boolean;
}

interface Candidate {
  readonly barrier: Barrier;
  readonly xyM: Float64Array;
  readonly heightM: Float64Array;
  readonly ring: Float64Array;
  readonly bounds: readonly [number, number, number, number];
  readonly least: number;
  readonly greatest: number;
}

function candidate(barrier: Barrier, xyM: Float64Array, heightM: Float64Array): Candidate {
  const ring =
    barrier.shape === 'area' ? xyM : stripRing(xyM[0], xyM[1], xyM[2], xyM[3], Math.max(0, barrier.widthM));
  return {
    barrier,
    xyM,
    heightM,
    ring,
    bounds: boundsOf(ring),
    least: Math.min(...heightM),
    greatest: Math.max(...heightM),
  };
}

const boundsNear = (a: Candidate['bounds'], b: Candidate['bounds'], gapM: number): boolean =>
  a[0] <= b[2] + gapM && b[0] <= a[2] + gapM && a[1] <= b[3] + gapM && b[1] <= a[3] + gapM;

const alikeInHeight = (a: Candidate, b: Candidate): boolean =>
  a.greatest * SHARED_LENGTH_HEIGHT_RATIO >= b.least && b.greatest * SHARED_LENGTH_HEIGHT_RATIO >= a.least;

function* straightPieces(barrier: Barrier): Generator<Candidate> {
  const { xyM, heightM } = barrier;
  if (barrier.shape === 'area') {
    if (xyM.length >= 6) yield candidate(barrier, xyM, heightM);
    return;
  }
  for (let i = 0; i + 3 < xyM.length; i += 2) {
    if (Math.hypot(xyM[i + 2] - xyM[i], xyM[i + 3] - xyM[i + 1]) < SAME_POINT_M) continue;
    yield candidate(barrier, xyM.slice(i, i + 4), heightM.slice(i / 2, i / 2 + 2));
  }
}

/** Where a line stops short of something alike in height by less than the closed gap, the line is carried on to it. */
function* bridges(own: Barrier, all: readonly Candidate[]): Generator<Candidate> {
  const { xyM, heightM } = own;
  for (const vertex of [0, heightM.length - 1]) {
    const x = xyM[2 * vertex];
    const y = xyM[2 * vertex + 1];
    const endHeight = Float64Array.of(heightM[vertex], heightM[vertex]);
    const end = candidate(own, Float64Array.of(x, y, x, y), endHeight);
    for (const other of all) {
      if (other.barrier === own || !alikeInHeight(end, other)) continue;
      if (!boundsNear(end.bounds, other.bounds, CLOSED_GAP_M)) continue;
      const distanceM = distanceToRing(x, y, other.ring);
      if (distanceM > CLOSED_GAP_M || (other.barrier.shape === 'area' && distanceM === 0)) continue;
      const to = nearestOutline(x, y, other);
      if (Math.hypot(to[0] - x, to[1] - y) < SAME_POINT_M) continue;
      yield candidate(own, Float64Array.of(x, y, to[0], to[1]), endHeight);
    }
  }
}

/** Nearest point of a line's centreline or of an area's edge. */
function nearestOutline(x: number, y: number, other: Candidate): readonly [number, number] {
  const { xyM } = other;
  let best: readonly [number, number] = [xyM[0], xyM[1]];
  const edges = other.barrier.shape === 'area' ? xyM.length / 2 : xyM.length / 2 - 1;
  for (let edge = 0; edge < edges; edge++) {
    const i = 2 * edge;
    const j = (i + 2) % xyM.length;
    const near = nearestOnSegment(x, y, xyM[i], xyM[i + 1], xyM[j], xyM[j + 1]);
    if (Math.hypot(near[0] - x, near[1] - y) < Math.hypot(best[0] - x, best[1] - y)) best = near;
  }
  return best;
}

/**
 * Cuts barriers into straight pieces and areas, closes the smallest gaps, and groups what touches.
 * @param leastHeightM things nowhere higher than this do nothing and are left out, as are things of porosity 1.
 */
export function barrierPieces(barriers: readonly Barrier[], leastHeightM: number): Piece[] {
  const active = barriers.filter(
    (barrier) =>
      Math.min(barrier.porosityOn, barrier.porosityOff) < 1 && Math.max(...barrier.heightM) > leastHeightM,
  );
  const drawn = active.flatMap((barrier) => [...straightPieces(barrier)]);
  const all = [
    ...drawn,
    ...active.flatMap((barrier) => (barrier.shape === 'line' ? [...bridges(barrier, drawn)] : [])),
  ];
  const parent = all.map((_, i) => i);
  const root = (i: number): number => {
    let at = i;
    while (parent[at] !== at) {
      parent[at] = parent[parent[at]];
      at = parent[at];
    }
    return at;
  };
  for (let i = 0; i < all.length; i++) {
    for (let j = 0; j < i; j++) {
      const [a, b] = [all[i], all[j]];
      if (!boundsNear(a.bounds, b.bounds, CLOSED_GAP_M) || root(i) === root(j)) continue;
      if (alikeInHeight(a, b) && footprintsMeet(a.ring, b.ring, CLOSED_GAP_M)) parent[root(i)] = root(j);
    }
  }
  const number = new Map<number, number>();
  return all.map(({ barrier, xyM, heightM }, i) => {
    const top = root(i);
    if (!number.has(top)) number.set(top, number.size);
    return { barrier, xyM, heightM, group: number.get(top) as number, bridge: i >= drawn.length };
  });
}
