/** Small questions about points, lines and rings in a plane, metres. Rings may repeat their first corner or not. */
export type XY = readonly [number, number];

function distanceToSegmentM(p: XY, a: XY, b: XY): number {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const squared = dx * dx + dy * dy;
  const t = squared === 0 ? 0 : Math.min(1, Math.max(0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / squared));
  return Math.hypot(p[0] - a[0] - t * dx, p[1] - a[1] - t * dy);
}

/** To the nearest place on an open line; to the point itself where the line has only one. */
export function distanceToLineM(p: XY, line: readonly XY[]): number {
  let least = Math.hypot(p[0] - line[0][0], p[1] - line[0][1]);
  for (let i = 1; i < line.length; i++) least = Math.min(least, distanceToSegmentM(p, line[i - 1], line[i]));
  return least;
}

/** Even-odd over all rings, so that holes are outside. */
export function isInside(p: XY, rings: readonly (readonly XY[])[]): boolean {
  let inside = false;
  for (const ring of rings)
    for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
      const [xi, yi] = ring[i];
      const [xj, yj] = ring[j];
      if (yi > p[1] !== yj > p[1] && p[0] < ((xj - xi) * (p[1] - yi)) / (yj - yi) + xi) inside = !inside;
    }
  return inside;
}

function segmentsCross(a: XY, b: XY, c: XY, d: XY): boolean {
  const side = (p: XY, q: XY, r: XY) => (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
  return side(a, b, c) * side(a, b, d) <= 0 && side(c, d, a) * side(c, d, b) <= 0;
}

/** True where a line enters a polygon: a corner of it inside, or a piece of it across a side. */
export function lineEnters(line: readonly XY[], rings: readonly (readonly XY[])[]): boolean {
  if (line.some((p) => isInside(p, rings))) return true;
  for (let i = 1; i < line.length; i++)
    for (const ring of rings)
      for (let k = 1; k < ring.length; k++)
        if (segmentsCross(line[i - 1], line[i], ring[k - 1], ring[k])) return true;
  return false;
}
