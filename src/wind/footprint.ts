/** Distances between the footprints of barrier pieces: rings of x, y pairs, metres, first vertex not repeated. */

/** Ring of a straight piece of belt with flat ends; a wall without width gives a flat ring. */
export function stripRing(x1: number, y1: number, x2: number, y2: number, widthM: number): Float64Array {
  const lengthM = Math.hypot(x2 - x1, y2 - y1);
  const px = lengthM > 0 ? (-(y2 - y1) / lengthM) * (widthM / 2) : 0;
  const py = lengthM > 0 ? ((x2 - x1) / lengthM) * (widthM / 2) : 0;
  return Float64Array.of(x1 + px, y1 + py, x2 + px, y2 + py, x2 - px, y2 - py, x1 - px, y1 - py);
}

/** The point of a segment nearest to (x, y). */
export function nearestOnSegment(
  x: number,
  y: number,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
): readonly [number, number] {
  const dx = x2 - x1;
  const dy = y2 - y1;
  const square = dx * dx + dy * dy;
  const q = square > 0 ? Math.min(1, Math.max(0, ((x - x1) * dx + (y - y1) * dy) / square)) : 0;
  return [x1 + q * dx, y1 + q * dy];
}

const distanceToSegment = (x: number, y: number, ring: Float64Array, i: number): number => {
  const j = (i + 2) % ring.length;
  const [nx, ny] = nearestOnSegment(x, y, ring[i], ring[i + 1], ring[j], ring[j + 1]);
  return Math.hypot(x - nx, y - ny);
};

/** Even-odd rule; points on the edge may fall either way. */
export function isInsideRing(x: number, y: number, ring: Float64Array): boolean {
  let inside = false;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    const yi = ring[i + 1];
    const yj = ring[j + 1];
    if (yi > y !== yj > y && x < ((ring[j] - ring[i]) * (y - yi)) / (yj - yi) + ring[i]) inside = !inside;
  }
  return inside;
}

/** Distance from a point to a footprint, 0 inside it. */
export function distanceToRing(x: number, y: number, ring: Float64Array): number {
  if (isInsideRing(x, y, ring)) return 0;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < ring.length; i += 2) least = Math.min(least, distanceToSegment(x, y, ring, i));
  return least;
}

const turn = (ax: number, ay: number, bx: number, by: number, cx: number, cy: number): number =>
  (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);

function edgesCross(a: Float64Array, i: number, b: Float64Array, k: number): boolean {
  const j = (i + 2) % a.length;
  const l = (k + 2) % b.length;
  const t1 = turn(a[i], a[i + 1], a[j], a[j + 1], b[k], b[k + 1]);
  const t2 = turn(a[i], a[i + 1], a[j], a[j + 1], b[l], b[l + 1]);
  const t3 = turn(b[k], b[k + 1], b[l], b[l + 1], a[i], a[i + 1]);
  const t4 = turn(b[k], b[k + 1], b[l], b[l + 1], a[j], a[j + 1]);
  return t1 * t2 < 0 && t3 * t4 < 0;
}

/** Whether two footprints touch, overlap or come within `gapM` of each other. */
export function footprintsMeet(a: Float64Array, b: Float64Array, gapM: number): boolean {
  for (let i = 0; i < a.length; i += 2) {
    for (let k = 0; k < b.length; k += 2) {
      if (edgesCross(a, i, b, k)) return true;
      if (distanceToSegment(a[i], a[i + 1], b, k) <= gapM) return true;
      if (distanceToSegment(b[k], b[k + 1], a, i) <= gapM) return true;
    }
  }
  return isInsideRing(a[0], a[1], b) || isInsideRing(b[0], b[1], a);
}

/** West, south, east, north of a ring. */
export function boundsOf(ring: Float64Array): readonly [number, number, number, number] {
  let [west, south, east, north] = [ring[0], ring[1], ring[0], ring[1]];
  for (let i = 2; i < ring.length; i += 2) {
    west = Math.min(west, ring[i]);
    east = Math.max(east, ring[i]);
    south = Math.min(south, ring[i + 1]);
    north = Math.max(north, ring[i + 1]);
  }
  return [west, south, east, north];
}
