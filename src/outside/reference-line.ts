import { type Frame, type LonLat, toLocal } from '../geo/frame.ts';
import { type Taped, tapedDistance } from '../geo/tape.ts';
import type { Grid } from '../numeric/grid.ts';
import { distanceToLineM } from '../site/plane-geometry.ts';
import { BadInputError } from '../units/bad-input.ts';
import type { FieldSide, FindablePoint } from './findable-points.ts';

/** The two points that offsets are taped from, A first. */
export interface ReferenceLine {
  readonly a: FindablePoint;
  readonly b: FindablePoint;
  readonly length: Taped;
  /** True where it is one side of a field. */
  readonly isSide: boolean;
}

/** A shorter line gives no direction to square off from, m. */
const SHORTEST_M = 2;

/**
 * The line that offsets are taped from: the one asked for, or the side of a field that lies nearest to the places.
 * @throws BadInputError for letters that are not on the sketch, and where nothing can be found to tape from.
 */
export function referenceLine(
  found: { readonly points: readonly FindablePoint[]; readonly sides: readonly FieldSide[] },
  wanted: readonly [string, string] | null,
  places: readonly LonLat[],
  frame: Frame,
  ground: Grid,
): ReferenceLine {
  const { points, sides } = found;
  const made = (a: FindablePoint, b: FindablePoint): ReferenceLine => ({
    a,
    b,
    length: tapedDistance(frame, ground, a.lonLat, b.lonLat),
    isSide: sides.some(([i, k]) => [i, k].every((end) => points[end] === a || points[end] === b)),
  });
  if (points.length < 2)
    throw new BadInputError(
      'There is nothing to tape from: expected two points that can be found outside, such as corners of a field, gateposts, or places marked by a reading.',
    );
  if (wanted) {
    const [a, b] = wanted.map((letter) => {
      const point = points.find((each) => each.letter === letter.trim().toUpperCase());
      if (point) return point;
      throw new BadInputError(
        `The line to tape from names ${JSON.stringify(letter)}; expected two letters of ${points.map((each) => each.letter).join(', ')}.`,
      );
    });
    const line = made(a, b);
    if (line.length.levelM < SHORTEST_M)
      throw new BadInputError(
        `The points ${a.letter} and ${b.letter} are ${line.length.levelM.toFixed(1)} m apart; expected two that are at least ${SHORTEST_M} m apart.`,
      );
    return line;
  }
  const local = points.map(({ lonLat }) => toLocal(frame, lonLat));
  const pairs = sides.length > 0 ? sides : neighbours(points.length);
  const awayM = ([i, k]: FieldSide) =>
    places.reduce((sum, place) => sum + distanceToLineM(toLocal(frame, place), [local[i], local[k]]), 0);
  const long = pairs.filter(
    ([i, k]) => Math.hypot(local[i][0] - local[k][0], local[i][1] - local[k][1]) >= SHORTEST_M,
  );
  if (long.length === 0)
    throw new BadInputError(
      `All points that can be found lie within ${SHORTEST_M} m; expected two further apart to tape from.`,
    );
  const [i, k] = long.reduce((best, pair) => (awayM(pair) < awayM(best) ? pair : best));
  return made(points[i], points[k]);
}

const neighbours = (count: number): FieldSide[] =>
  Array.from({ length: count }, (_, i) =>
    Array.from({ length: count - i - 1 }, (_each, k): FieldSide => [i, i + 1 + k]),
  ).flat();
