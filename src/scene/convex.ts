/** Small plane geometry on convex rings: vertices counter-clockwise, first not repeated, local metres. */
export type Ring = readonly (readonly [number, number])[];

/** Twice the signed area; positive when counter-clockwise. */
export function doubleArea(ring: Ring): number {
  let sum = 0;
  for (let i = 0; i < ring.length; i++) {
    const [x0, y0] = ring[i];
    const [x1, y1] = ring[(i + 1) % ring.length];
    sum += x0 * y1 - x1 * y0;
  }
  return sum;
}

export const counterClockwise = (ring: Ring): Ring => (doubleArea(ring) < 0 ? [...ring].reverse() : ring);

/** Both parts of a convex ring cut by the line through (px, py) along (dx, dy): left of it and right of it. */
export function cutByLine(ring: Ring, px: number, py: number, dx: number, dy: number): [Ring, Ring] {
  const left: [number, number][] = [];
  const right: [number, number][] = [];
  const sideOf = (p: readonly [number, number]) => dx * (p[1] - py) - dy * (p[0] - px);
  for (let i = 0; i < ring.length; i++) {
    const a = ring[i];
    const b = ring[(i + 1) % ring.length];
    const sa = sideOf(a);
    const sb = sideOf(b);
    if (sa >= 0) left.push([a[0], a[1]]);
    if (sa <= 0) right.push([a[0], a[1]]);
    if (sa * sb < 0) {
      const t = sa / (sa - sb);
      const p: [number, number] = [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
      left.push(p);
      right.push([p[0], p[1]]);
    }
  }
  return [left, right];
}

/** The longest diagonal or side of a ring: its length (m) and direction. */
export function longestExtent(ring: Ring): { lengthM: number; dx: number; dy: number } {
  let best = { lengthM: 0, dx: 1, dy: 0 };
  for (let i = 0; i < ring.length; i++)
    for (let k = i + 1; k < ring.length; k++) {
      const dx = ring[k][0] - ring[i][0];
      const dy = ring[k][1] - ring[i][1];
      const lengthM = Math.hypot(dx, dy);
      if (lengthM > best.lengthM) best = { lengthM, dx: dx / lengthM, dy: dy / lengthM };
    }
  return best;
}

/** Mean of the vertices: inside any convex ring. */
export function middleOf(ring: Ring): [number, number] {
  let x = 0;
  let y = 0;
  for (const p of ring) {
    x += p[0];
    y += p[1];
  }
  return [x / ring.length, y / ring.length];
}

export function isConvex(ring: Ring): boolean {
  for (let i = 0; i < ring.length; i++) {
    const a = ring[i];
    const b = ring[(i + 1) % ring.length];
    const c = ring[(i + 2) % ring.length];
    if ((b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]) < -1e-9) return false;
  }
  return true;
}
