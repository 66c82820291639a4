import { acrossWind, alongWind, EDGE_M, type WindRay } from './shelter-tile.ts';

/**
 * A part of a barrier between two wind rays: everything about it runs linearly from the first ray to the second.
 * Arrays hold the value on either ray. For a line entry and exit are the centreline.
 */
export interface Panel {
  /** Across-wind position of the two rays, rising. */
  readonly acrossM: readonly [number, number];
  /** Along-wind position at which the wind enters and leaves. */
  readonly entryM: readonly [number, number];
  readonly exitM: readonly [number, number];
  readonly entryHeightM: readonly [number, number];
  readonly exitHeightM: readonly [number, number];
  /** Width the wind crosses; null: from entry to exit. */
  readonly widthM: number | null;
}

/**
 * Panels of an area: the slabs between the rays through its vertices, each cut into the stretches inside the ring.
 * @param ring x, y pairs; @param heightM top at each vertex.
 */
export function areaPanels(ray: WindRay, ring: Float64Array, heightM: Float64Array): Panel[] {
  const count = heightM.length;
  const s = Float64Array.from({ length: count }, (_, i) => acrossWind(ray, ring[2 * i], ring[2 * i + 1]));
  const t = Float64Array.from({ length: count }, (_, i) => alongWind(ray, ring[2 * i], ring[2 * i + 1]));
  const rays = [...s].sort((a, b) => a - b);
  const panels: Panel[] = [];
  for (let slab = 0; slab + 1 < rays.length; slab++) {
    const acrossM = [rays[slab], rays[slab + 1]] as const;
    if (acrossM[1] - acrossM[0] < EDGE_M) continue;
    const middle = (acrossM[0] + acrossM[1]) / 2;
    const crossings: { middle: number; along: [number, number]; height: [number, number] }[] = [];
    for (let i = 0; i < count; i++) {
      const j = (i + 1) % count;
      if (s[i] < middle === s[j] < middle) continue;
      const at = (across: number, values: Float64Array): number =>
        values[i] + ((across - s[i]) / (s[j] - s[i])) * (values[j] - values[i]);
      crossings.push({
        middle: at(middle, t),
        along: [at(acrossM[0], t), at(acrossM[1], t)],
        height: [at(acrossM[0], heightM), at(acrossM[1], heightM)],
      });
    }
    crossings.sort((a, b) => a.middle - b.middle);
    for (let k = 0; k + 1 < crossings.length; k += 2) {
      panels.push({
        acrossM,
        entryM: crossings[k].along,
        exitM: crossings[k + 1].along,
        entryHeightM: crossings[k].height,
        exitHeightM: crossings[k + 1].height,
        widthM: null,
      });
    }
  }
  return panels;
}

/** The single panel of a straight piece of line; none where the wind runs along it. */
export function linePanels(ray: WindRay, xyM: Float64Array, heightM: Float64Array, widthM: number): Panel[] {
  const s = [acrossWind(ray, xyM[0], xyM[1]), acrossWind(ray, xyM[2], xyM[3])];
  const t = [alongWind(ray, xyM[0], xyM[1]), alongWind(ray, xyM[2], xyM[3])];
  if (Math.abs(s[1] - s[0]) < EDGE_M) return [];
  const [a, b] = s[0] < s[1] ? [0, 1] : [1, 0];
  const along = [t[a], t[b]] as const;
  const height = [heightM[a], heightM[b]] as const;
  const panel = { acrossM: [s[a], s[b]] as const, entryM: along, exitM: along };
  return [{ ...panel, entryHeightM: height, exitHeightM: height, widthM }];
}
