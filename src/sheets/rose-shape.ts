import type { PointMm } from './page-model.ts';

/** One direction of a rose. */
export interface RosePetal {
  readonly fromDeg: number;
  /** Share of the season's hours. */
  readonly frequency: number;
  /** Share of its hours in each Beaufort force, 0 to 12. */
  readonly forceShares: readonly number[];
}

/** Strengths that a petal is parted into from the middle outwards: broader and darker is stronger. */
export const ROSE_CLASSES = [
  { fromForce: 0, words: 'twigs move at most', breadth: 0.36, tint: '#ffffff' },
  { fromForce: 4, words: 'thin branches move, small trees sway', breadth: 0.62, tint: '#9dbdcb' },
  { fromForce: 6, words: 'large branches or whole trees move', breadth: 0.88, tint: '#1f5f7a' },
] as const;

/** Shares at which rings are drawn, the last of them the rim. */
export function roseRings(petals: readonly RosePetal[]): number[] {
  const most = Math.max(0.05, ...petals.map(({ frequency }) => frequency));
  const step = most > 0.4 ? 0.2 : most > 0.2 ? 0.1 : 0.05;
  return Array.from({ length: Math.ceil(most / step - 1e-9) }, (_, i) => (i + 1) * step);
}

/** Half the angle of a petal: even roses fill the circle, single directions stay thin. */
export const petalHalfDeg = (count: number): number => Math.min(180 / count, 22.5);

/**
 * Outlines of a petal's parts, one a class, empty where there is none, about (0, 0): x to the east, y to the south.
 * @param lengthAShare length on paper of a share of 1.
 */
export function petalParts(petal: RosePetal, halfDeg: number, lengthAShare: number): PointMm[][] {
  let reached = 0;
  return ROSE_CLASSES.map(({ fromForce, breadth }, i) => {
    const next: number = ROSE_CLASSES[i + 1]?.fromForce ?? 99;
    const share = petal.forceShares.slice(fromForce, next).reduce((sum, part) => sum + part, 0);
    const from = reached;
    reached += share * petal.frequency * lengthAShare;
    return share * petal.frequency > 1e-5 ? wedge(petal.fromDeg, halfDeg * breadth, from, reached) : [];
  });
}

/** A piece of a ring between two radii, to both sides of a direction. */
export function wedge(fromDeg: number, halfDeg: number, inner: number, outer: number): PointMm[] {
  const arc = (radius: number, sign: 1 | -1): PointMm[] =>
    [-1, -0.5, 0, 0.5, 1].map((part) => onCircle(fromDeg + sign * part * halfDeg, radius));
  return inner > 0 ? [...arc(inner, 1), ...arc(outer, -1)] : [[0, 0], ...arc(outer, 1)];
}

/** The point of a circle that lies in a compass direction from its middle. */
export function onCircle(deg: number, radius: number): PointMm {
  const rad = (deg * Math.PI) / 180;
  return [Math.sin(rad) * radius, -Math.cos(rad) * radius];
}
