import { degToRad } from '../units/angle.ts';
import type { PointMm } from './page-model.ts';

/** Parallel lines: how they lie (clockwise from the x axis of the page) and how far apart they are. */
export interface Hatching {
  readonly angleDeg: number;
  readonly spacingMm: number;
}

/**
 * The pieces of a hatching that lie inside the rings (even-odd, closed implicitly). The lines are anchored to the
 * page's corner, so that neighbouring areas of one hatching join.
 */
export function hatchLines(
  rings: readonly (readonly PointMm[])[],
  { angleDeg, spacingMm }: Hatching,
): (readonly [PointMm, PointMm])[] {
  const cos = Math.cos(degToRad(angleDeg));
  const sin = Math.sin(degToRad(angleDeg));
  // Crossings of each hatch line (by its number) with the edges, along the line.
  const crossings = new Map<number, number[]>();
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i++) {
      const [px, py] = ring[i];
      const [qx, qy] = ring[(i + 1) % ring.length];
      const pu = px * cos + py * sin;
      const pv = (-px * sin + py * cos) / spacingMm;
      const qu = qx * cos + qy * sin;
      const qv = (-qx * sin + qy * cos) / spacingMm;
      // Half-open, so that a line through a corner is counted once.
      const from = Math.ceil(Math.min(pv, qv));
      const upTo = Math.max(pv, qv);
      for (let line = from; line < upTo; line++) {
        const along = pu + ((line - pv) / (qv - pv)) * (qu - pu);
        const list = crossings.get(line);
        if (list) list.push(along);
        else crossings.set(line, [along]);
      }
    }
  }
  const pieces: (readonly [PointMm, PointMm])[] = [];
  for (const [line, along] of crossings) {
    along.sort((a, b) => a - b);
    const v = line * spacingMm;
    for (let i = 0; i + 1 < along.length; i += 2) {
      if (along[i + 1] - along[i] < 0.05) continue;
      pieces.push([
        [along[i] * cos - v * sin, along[i] * sin + v * cos],
        [along[i + 1] * cos - v * sin, along[i + 1] * sin + v * cos],
      ]);
    }
  }
  return pieces;
}
