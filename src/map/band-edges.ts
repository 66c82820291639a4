import { contours } from 'd3-contour';
import type { GridSpec } from '../numeric/grid.ts';
import type { BandSet } from '../units/bands.ts';
import { inkRgb } from './picture-painter.ts';

/** Where a picture crosses one limit between bands: places in cells from the raster's north-west corner. */
export interface BandEdge {
  readonly limit: number;
  /** 1 for the limit of the lightest band, rising into the dark. */
  readonly depth: number;
  /** The limit itself, open lines: what runs along the raster's border or around missing cells is left out. */
  readonly lines: readonly (readonly (readonly [number, number])[])[];
  /** Everything on the darker side of the limit, as polygon rings (first the outer one). */
  readonly darkSide: readonly (readonly (readonly [number, number])[])[][];
}

const lightness = (ink: string): number => {
  const [r, g, b] = inkRgb(ink);
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};

/** True where the lowest band has the darkest ink, as for light; false where the highest has, as for wind. */
export const darkBelow = (set: BandSet): boolean =>
  lightness(set.bands[0].ink) < lightness(set.bands[set.bands.length - 1].ink);

/** The parts of a closed ring that are a true crossing: not the raster's border, not beside a cell without data. */
function openParts(
  ring: readonly (readonly [number, number])[],
  spec: GridSpec,
  values: Float32Array,
): (readonly [number, number])[][] {
  const { columns, rows } = spec;
  // A crossing lies between neighbouring centres, and all of them must carry data; d3-contour puts the crossing
  // beside a missing cell right on the other cell's centre, hence the hair's breadth.
  const hair = 1e-6;
  const real = ([x, y]: readonly [number, number]): boolean => {
    if (x < 0.5 || y < 0.5 || x > columns - 0.5 || y > rows - 0.5) return false;
    const lastColumn = Math.min(columns - 1, Math.ceil(x - 0.5 + hair));
    const lastRow = Math.min(rows - 1, Math.ceil(y - 0.5 + hair));
    for (let row = Math.max(0, Math.floor(y - 0.5 - hair)); row <= lastRow; row++)
      for (let column = Math.max(0, Math.floor(x - 0.5 - hair)); column <= lastColumn; column++)
        if (Number.isNaN(values[row * columns + column])) return false;
    return true;
  };
  const parts: (readonly [number, number])[][] = [];
  let part: (readonly [number, number])[] = [];
  for (const point of ring) {
    if (real(point)) part.push(point);
    else {
      if (part.length > 1) parts.push(part);
      part = [];
    }
  }
  if (part.length > 1) parts.push(part);
  return parts;
}

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
    const rings = side.coordinates as unknown as (readonly (readonly [number, number])[])[][];
    return {
      limit,
      depth: below ? limits.length - index : index + 1,
      lines: rings.flatMap((polygon) => polygon.flatMap((ring) => openParts(ring, spec, values))),
      darkSide: rings,
    };
  });
}
