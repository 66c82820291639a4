/** Outlines of things from the spans of their pieces in many vertical cuts. */

/** Altitudes (degrees) between which something is in sight. */
export type Interval = readonly [number, number];

/** Spans closer together than this belong together, degrees. */
const TOUCHING_DEG = 0.02;

/** The union of spans, rising. */
export function mergedIntervals(intervals: readonly Interval[]): Interval[] {
  const sorted = [...intervals].sort((a, b) => a[0] - b[0]);
  const merged: [number, number][] = [];
  for (const [low, high] of sorted) {
    const last = merged.at(-1);
    if (last && low <= last[1] + TOUCHING_DEG) last[1] = Math.max(last[1], high);
    else merged.push([low, high]);
  }
  return merged;
}

interface Chain {
  readonly azimuthDeg: number[];
  readonly low: number[];
  readonly high: number[];
}

/**
 * Closed rings around what the cuts show: spans of neighbouring cuts that overlap are joined, the upper ends forward
 * and the lower ends back.
 * @param cuts by rising azimuth; an empty list of spans ends what was there
 */
export function outlineRings(
  cuts: readonly { readonly azimuthDeg: number; readonly intervals: readonly Interval[] }[],
): Float32Array[] {
  const rings: Float32Array[] = [];
  let open: Chain[] = [];
  for (const { azimuthDeg, intervals } of cuts) {
    const waiting = [...open];
    const next: Chain[] = [];
    for (const [low, high] of intervals) {
      const at = waiting.findIndex((chain) => low <= chain.high.at(-1)! && high >= chain.low.at(-1)!);
      const chain = at >= 0 ? waiting.splice(at, 1)[0] : { azimuthDeg: [], low: [], high: [] };
      chain.azimuthDeg.push(azimuthDeg);
      chain.low.push(low);
      chain.high.push(high);
      next.push(chain);
    }
    for (const chain of waiting) close(chain);
    open = next;
  }
  for (const chain of open) close(chain);
  return rings;

  function close({ azimuthDeg, low, high }: Chain): void {
    // A single cut has no width.
    if (azimuthDeg.length < 2) return;
    const ring = new Float32Array(4 * azimuthDeg.length);
    const last = 2 * azimuthDeg.length - 1;
    for (let i = 0; i < azimuthDeg.length; i++) {
      ring[2 * i] = azimuthDeg[i];
      ring[2 * i + 1] = high[i];
      ring[2 * (last - i)] = azimuthDeg[i];
      ring[2 * (last - i) + 1] = low[i];
    }
    rings.push(ring);
  }
}
