import { contours } from 'd3-contour';
import type { GridSpec } from './grid.ts';

/** Column and row of a raster, 0 at its north-west corner, counted at cell edges: the first centre is (0.5, 0.5). */
export type CellPoint = readonly [number, number];

/** A crossing lies on a neighbour's centre by rounding, or right on it beside a missing cell: within this of it. */
const HAIR = 1e-6;

/**
 * Where the rings that marching squares closes along the raster's border and around missing cells are true crossings:
 * open lines, or a whole ring (its first point repeated) where it is one throughout. A line that leaves the outermost
 * cell centres goes on to the border, as values are held constant from there on.
 */
export function trueCrossings(
  ring: readonly CellPoint[],
  spec: GridSpec,
  values: ArrayLike<number>,
): CellPoint[][] {
  const open = ring.slice(0, -1);
  const keep = open.map((point) => isCrossing(point, spec, values));
  const firstCut = keep.indexOf(false);
  if (firstCut < 0) return [[...ring]];
  const lines: CellPoint[][] = [];
  let line: CellPoint[] = [];
  for (let k = 1; k <= open.length; k++) {
    const i = (firstCut + k) % open.length;
    if (keep[i]) line.push(open[i]);
    else {
      if (line.length > 0) lines.push(toBorder(line, spec));
      line = [];
    }
  }
  return lines.filter((each) => each.length > 1);
}

/** A crossing lies between neighbouring centres, and all of them must carry data. */
function isCrossing([x, y]: CellPoint, { columns, rows }: GridSpec, values: ArrayLike<number>): boolean {
  if (x < 0.5 - HAIR || y < 0.5 - HAIR || x > columns - 0.5 + HAIR || y > rows - 0.5 + HAIR) return false;
  const lastColumn = Math.min(columns - 1, Math.ceil(x - 0.5 + HAIR));
  const lastRow = Math.min(rows - 1, Math.ceil(y - 0.5 + HAIR));
  for (let row = Math.max(0, Math.floor(y - 0.5 - HAIR)); row <= lastRow; row++)
    for (let column = Math.max(0, Math.floor(x - 0.5 - HAIR)); column <= lastColumn; column++)
      if (Number.isNaN(values[row * columns + column])) return false;
  return true;
}

function toBorder(line: readonly CellPoint[], spec: GridSpec): CellPoint[] {
  const before = onBorder(line[0], spec);
  const after = line.length > 1 ? onBorder(line[line.length - 1], spec) : null;
  return [...(before ? [before] : []), ...line, ...(after ? [after] : [])];
}

/** The border's point beside one on the outermost cell centres; null elsewhere. */
function onBorder([x, y]: CellPoint, { columns, rows }: GridSpec): CellPoint | null {
  if (x <= 0.5 + HAIR) return [0, y];
  if (x >= columns - 0.5 - HAIR) return [columns, y];
  if (y <= 0.5 + HAIR) return [x, 0];
  if (y >= rows - 0.5 - HAIR) return [x, rows];
  return null;
}

/** Closed lines around less than this many cells are specks that the raster hardly resolves. */
const SMALLEST_CELLS = 2;
/** Corner cutting (Chaikin 1974) this often: a corner of a cell becomes an arc that nobody sees the corners of. */
const ROUNDINGS = 2;

/**
 * The lines along which a raster has a value, smoothed, in cells from its north-west corner: they end at its border
 * and at missing cells, and close where they close.
 * @param values one a cell, row-major; NaN where there are none.
 */
export function levelLines(spec: GridSpec, values: Float32Array, level: number): CellPoint[][] {
  // d3-contour reads any array of numbers; its types know only plain ones.
  const area = contours()
    .size([spec.columns, spec.rows])
    .contour(values as unknown as number[], level);
  const rings = (area.coordinates as unknown as CellPoint[][][]).flat();
  return rings
    .flatMap((ring) => trueCrossings(ring, spec, values))
    .filter((line) => !isClosed(line) || enclosedCells(line) >= SMALLEST_CELLS)
    .map(smooth);
}

const isClosed = (line: readonly CellPoint[]): boolean => {
  const [first, last] = [line[0], line[line.length - 1]];
  return line.length > 3 && first[0] === last[0] && first[1] === last[1];
};

function enclosedCells(ring: readonly CellPoint[]): number {
  let sum = 0;
  for (let i = 0; i + 1 < ring.length; i++) sum += ring[i][0] * ring[i + 1][1] - ring[i + 1][0] * ring[i][1];
  return Math.abs(sum) / 2;
}

function smooth(line: readonly CellPoint[]): CellPoint[] {
  let points = [...line];
  for (let round = 0; round < ROUNDINGS; round++) points = cutCorners(points);
  return points;
}

/** Each corner gives way to two points, a quarter of the way along its sides; the ends of an open line stay. */
function cutCorners(line: readonly CellPoint[]): CellPoint[] {
  const closed = isClosed(line);
  const cut: CellPoint[] = closed ? [] : [line[0]];
  for (let i = 0; i + 1 < line.length; i++) {
    const [a, b] = [line[i], line[i + 1]];
    if (closed || i > 0) cut.push(between(a, b, 0.25));
    if (closed || i + 2 < line.length) cut.push(between(a, b, 0.75));
  }
  cut.push(closed ? cut[0] : line[line.length - 1]);
  return cut;
}

const between = (a: CellPoint, b: CellPoint, share: number): CellPoint => [
  a[0] + share * (b[0] - a[0]),
  a[1] + share * (b[1] - a[1]),
];
