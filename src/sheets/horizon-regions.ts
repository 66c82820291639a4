import { contours } from 'd3-contour';
import { AS_GOOD_AS_SKY, LET_THROUGH } from './horizon-inks.ts';
import type { HorizonView } from './horizon-input.ts';

/** Part of the view where foliage lets less than a limit through: rings of azimuth and altitude, even-odd. */
export interface FoliageRegion {
  /** Index into LET_THROUGH. */
  readonly tint: number;
  readonly rings: readonly (readonly (readonly [number, number])[])[];
}

/** Cells added on each side, so that what reaches over the strip's ends and the zenith is cut there and not before. */
const RIM = 1;

/** The tints as regions, lightest first, each holding all darker ones: painted in this order they show the bands. */
export function foliageRegions(view: HorizonView, topDeg: number): FoliageRegion[] {
  const { columns, rows, stepDeg } = view;
  const firstRow = Math.max(0, rows - Math.ceil(topDeg / stepDeg) - RIM);
  const wide = columns + 2 * RIM;
  const high = rows - firstRow + 2 * RIM;
  const taken = new Float32Array(wide * high);
  for (let row = 0; row < high; row++) {
    const from = Math.min(rows - 1, Math.max(0, firstRow + row - RIM));
    for (let column = 0; column < wide; column++)
      taken[row * wide + column] = 1 - view.letThrough[from * columns + ((column - RIM + columns) % columns)];
  }
  const trace = contours().size([wide, high]).smooth(true);
  const values = taken as unknown as number[];
  return LET_THROUGH.map((_, tint) => {
    const limit = 1 - (tint === 0 ? AS_GOOD_AS_SKY : LET_THROUGH[tint - 1].from);
    const rings = trace.contour(values, limit).coordinates.flat() as [number, number][][];
    return {
      tint,
      rings: rings.map((ring) =>
        ring.map(([x, y]) => [(x - RIM) * stepDeg, (rows - firstRow - (y - RIM)) * stepDeg] as const),
      ),
    };
  }).filter(({ rings }) => rings.length > 0);
}
