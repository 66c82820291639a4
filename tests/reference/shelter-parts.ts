/** The plain shelter model's barriers: straight parts and areas, small gaps closed, joined where they touch. */
import type { Barrier } from '../../src/crowns/barrier.ts';

export interface Part {
  readonly barrier: Barrier;
  readonly points: readonly (readonly [number, number])[];
  readonly heights: readonly number[];
  readonly outline: readonly (readonly [number, number])[];
}

export const between = (a: number, b: number, q: number): number => a + q * (b - a);

function distanceToEdge(
  p: readonly [number, number],
  a: readonly [number, number],
  b: readonly [number, number],
) {
  const [vx, vy] = [b[0] - a[0], b[1] - a[1]];
  const square = vx * vx + vy * vy;
  const q = square === 0 ? 0 : Math.min(1, Math.max(0, ((p[0] - a[0]) * vx + (p[1] - a[1]) * vy) / square));
  const foot: readonly [number, number] = [a[0] + q * vx, a[1] + q * vy];
  return { foot, distance: Math.hypot(p[0] - foot[0], p[1] - foot[1]) };
}

export function contains(
  ring: readonly (readonly [number, number])[],
  p: readonly [number, number],
): boolean {
  let crossings = 0;
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length];
    if (a[1] > p[1] === b[1] > p[1]) return;
    if (a[0] + ((p[1] - a[1]) / (b[1] - a[1])) * (b[0] - a[0]) > p[0]) crossings++;
  });
  return crossings % 2 === 1;
}

/** Distance between two outlines, 0 where they overlap. */
function gapBetween(a: Part['outline'], b: Part['outline']): number {
  if (a.some((p) => contains(b, p)) || b.some((p) => contains(a, p))) return 0;
  let least = Number.POSITIVE_INFINITY;
  const steps = 400;
  a.forEach((from, i) => {
    const to = a[(i + 1) % a.length];
    for (let k = 0; k <= steps; k++) {
      const p: readonly [number, number] = [
        between(from[0], to[0], k / steps),
        between(from[1], to[1], k / steps),
      ];
      if (contains(b, p)) least = 0;
      b.forEach((c, j) => {
        least = Math.min(least, distanceToEdge(p, c, b[(j + 1) % b.length]).distance);
      });
    }
  });
  return least;
}

function partOf(barrier: Barrier, points: Part['points'], heights: readonly number[]): Part {
  if (barrier.shape === 'area') return { barrier, points, heights, outline: points };
  const [[x1, y1], [x2, y2]] = points;
  const length = Math.hypot(x2 - x1, y2 - y1) || 1;
  const half = barrier.widthM / 2;
  const px = ((y2 - y1) / length) * half;
  const py = (-(x2 - x1) / length) * half;
  return {
    barrier,
    points,
    heights,
    outline: [
      [x1 + px, y1 + py],
      [x2 + px, y2 + py],
      [x2 - px, y2 - py],
      [x1 - px, y1 - py],
    ],
  };
}

export function partsOf(barriers: readonly Barrier[]): Part[] {
  const parts: Part[] = [];
  for (const barrier of barriers) {
    const points = Array.from(
      barrier.heightM,
      (_, i) => [barrier.xyM[2 * i], barrier.xyM[2 * i + 1]] as const,
    );
    const heights = [...barrier.heightM];
    if (barrier.shape === 'area') parts.push(partOf(barrier, points, heights));
    else {
      for (let i = 0; i + 1 < points.length; i++) {
        parts.push(partOf(barrier, [points[i], points[i + 1]], [heights[i], heights[i + 1]]));
      }
    }
  }
  return parts;
}

const alike = (a: readonly number[], b: readonly number[]): boolean =>
  Math.max(...a) * 2 >= Math.min(...b) && Math.max(...b) * 2 >= Math.min(...a);

/** Carries lines that stop within half a metre of another thing on to it. */
export function withSmallGapsClosed(parts: readonly Part[], barriers: readonly Barrier[]): Part[] {
  const added: Part[] = [];
  for (const barrier of barriers) {
    if (barrier.shape !== 'line') continue;
    for (const i of [0, barrier.heightM.length - 1]) {
      const end = [barrier.xyM[2 * i], barrier.xyM[2 * i + 1]] as const;
      const height = barrier.heightM[i];
      for (const other of parts) {
        if (other.barrier === barrier || !alike([height], other.heights)) continue;
        const inside = contains(other.outline, end);
        const edges = other.outline.map((a, j) =>
          distanceToEdge(end, a, other.outline[(j + 1) % other.outline.length]),
        );
        const gap = inside ? 0 : Math.min(...edges.map((edge) => edge.distance));
        if (gap > 0.5 || (gap === 0 && other.barrier.shape === 'area')) continue;
        const closed = other.barrier.shape === 'area';
        const feet = other.points.flatMap((a, j) =>
          closed || j + 1 < other.points.length
            ? [distanceToEdge(end, a, other.points[(j + 1) % other.points.length])]
            : [],
        );
        const nearest = feet.reduce((best, foot) => (foot.distance < best.distance ? foot : best));
        if (nearest.distance > 1e-6) added.push(partOf(barrier, [end, nearest.foot], [height, height]));
      }
    }
  }
  return [...parts, ...added];
}

/** Parts that touch, each part with all it is connected to. */
export function connected(parts: readonly Part[]): (readonly Part[])[] {
  const meets = parts.map((a) =>
    parts.map((b) => a !== b && alike(a.heights, b.heights) && gapBetween(a.outline, b.outline) <= 0.5),
  );
  const seen = new Set<number>();
  const groups: Part[][] = [];
  parts.forEach((_, start) => {
    if (seen.has(start)) return;
    const group: Part[] = [];
    const queue = [start];
    seen.add(start);
    for (let at = queue.pop(); at !== undefined; at = queue.pop()) {
      group.push(parts[at]);
      for (let next = 0; next < parts.length; next++) {
        if (!meets[at][next] || seen.has(next)) continue;
        seen.add(next);
        queue.push(next);
      }
    }
    groups.push(group);
  });
  return groups;
}
