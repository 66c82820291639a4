import { contours } from 'd3-contour';
import type { GridSpec } from '../numeric/grid.ts';
import { type CellPoint, trueCrossings } from '../numeric/level-lines.ts';
import type { BandSet } from '../units/bands.ts';
import { inkRgb } from './picture-painter.ts';

/** Where a picture crosses one limit between bands: places in cells from the raster's north-west corner. */
export interface BandEdge {
  readonly limit: number;
  /** 1 for the limit of the lightest band, rising into the dark. */
  readonly depth: number;
  /** The limit itself, open lines: what runs along the raster's border or around missing cells is left out. */
  readonly lines: readonly (readonly CellPoint[])[];
  /** Everything on the darker side of the limit, as polygon rings (first the outer one). */
  readonly darkSide: readonly (readonly CellPoint[])[][];
}

const lightness = (ink: string): number => {
  const [r, g, b] = inkRgb(ink);
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};

/** True where the lowest band has the darkest ink, as for light; false where the highest has, as for wind. */
export const darkBelow = (set: BandSet): boolean =>
  lightness(set.bands[0].ink) < lightness(set.bands[set.bands.length - 1].ink);

/**
 * The limits between the bands of a picture, linear between cell centres, so that they fall on the edges that
 * `paintBands` paints.
 */
export function bandEdges(spec: GridSpec, values: Float32Array, set: BandSet): BandEdge[] {
  const below = darkBelow(set);
  const generator = contours().size([spec.columns, spec.rows]);
  const signed = below ? values.map((value) => -value) : values;
  const limits = set.bands.slice(1).map((band) => band.from);
  return limits.map((limit, index) => {
    // d3-contour reads any array of numbers; its types know only plain ones.
    const side = generator.contour(signed as unknown as number[], below ? -limit : limit);
    const rings = side.coordinates as unknown as CellPoint[][][];
    return {
      limit,
      depth: below ? limits.length - index : index + 1,
      lines: rings.flatMap((polygon) => polygon.flatMap((ring) => trueCrossings(ring, spec, values))),
      darkSide: rings,
    };
  });
}
