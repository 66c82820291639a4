import type { Grid } from '../numeric/grid.ts';
import { cellCount } from '../numeric/grid.ts';

/** Slope and aspect of every cell, row-major as the grid; NaN where there is no ground. */
export interface SlopeAspect {
  /** Degrees above the horizontal. */
  readonly slopeDeg: Float32Array;
  /** The way the ground falls, degrees clockwise from true north; NaN where it is level. */
  readonly aspectDeg: Float32Array;
}

/**
 * Calls back with every cell's slope by Horn (1981), eastward and northward rise per metre along the grid.
 * Neighbours that are missing (beyond the edge, or no data) are drawn on in a straight line from the opposite
 * neighbour, so that an even slope stays exact up to its edge.
 */
function forEachGradient(
  grid: Grid,
  visit: (cell: number, risePerEastM: number, risePerNorthM: number) => void,
): void {
  const { columns, rows, values, cellM } = grid;
  const at = (r: number, c: number): number =>
    r < 0 || c < 0 || r >= rows || c >= columns ? Number.NaN : values[r * columns + c];
  for (let r = 0; r < rows; r++) {
    for (let col = 0; col < columns; col++) {
      const cell = r * columns + col;
      const e = values[cell];
      if (Number.isNaN(e)) {
        visit(cell, Number.NaN, Number.NaN);
        continue;
      }
      let b = at(r - 1, col);
      let d = at(r, col - 1);
      let f = at(r, col + 1);
      let h = at(r + 1, col);
      if (Number.isNaN(b)) b = Number.isNaN(h) ? e : 2 * e - h;
      if (Number.isNaN(h)) h = 2 * e - b;
      if (Number.isNaN(d)) d = Number.isNaN(f) ? e : 2 * e - f;
      if (Number.isNaN(f)) f = 2 * e - d;
      // Corners by the parallelogram of their two neighbours.
      const a = valueOr(at(r - 1, col - 1), b + d - e);
      const c = valueOr(at(r - 1, col + 1), b + f - e);
      const g = valueOr(at(r + 1, col - 1), h + d - e);
      const i = valueOr(at(r + 1, col + 1), h + f - e);
      visit(
        cell,
        (c + 2 * f + i - (a + 2 * d + g)) / (8 * cellM),
        (a + 2 * b + c - (g + 2 * h + i)) / (8 * cellM),
      );
    }
  }
}

const valueOr = (value: number, otherwise: number): number => (Number.isNaN(value) ? otherwise : value);

/**
 * Slope and aspect by Horn, "Hill shading and the reflectance map", Proc. IEEE 69, 1981.
 * @param convergenceRad the frame's grid convergence, which turns grid aspects into true ones.
 */
export function slopeAndAspect(grid: Grid, convergenceRad: number): SlopeAspect {
  const slopeDeg = new Float32Array(cellCount(grid));
  const aspectDeg = new Float32Array(cellCount(grid));
  const toDeg = 180 / Math.PI;
  forEachGradient(grid, (cell, east, north) => {
    slopeDeg[cell] = Math.atan(Math.hypot(east, north)) * toDeg;
    const level = east === 0 && north === 0;
    const trueDeg = (Math.atan2(-east, -north) + convergenceRad) * toDeg;
    aspectDeg[cell] = level ? Number.NaN : (trueDeg + 720) % 360;
  });
  return { slopeDeg, aspectDeg };
}

/** How the drawn light falls. */
export interface DrawnLight {
  /** Where it comes from, degrees clockwise from true north. Default north-west, as maps are drawn. */
  readonly fromDeg?: number;
  readonly altitudeDeg?: number;
  /** Heights are multiplied by this before shading. */
  readonly exaggeration?: number;
}

/** Weight of the main light and of two side lights 60° to its left and right, which keep slopes along it readable. */
const LIGHTS: readonly [number, number][] = [
  [0, 0.64],
  [-60, 0.18],
  [60, 0.18],
];

/**
 * Relief shading of every cell, 0 (dark) to 1 (full light), continuous (no 8-bit slopes in between); NaN where there
 * is no ground. Level ground gets sin(altitude). Lambert's cosine law under one main and two soft side lights.
 */
export function hillshade(grid: Grid, convergenceRad: number, light: DrawnLight = {}): Float32Array {
  const { fromDeg = 315, altitudeDeg = 40, exaggeration = 1 } = light;
  const sinAlt = Math.sin((altitudeDeg * Math.PI) / 180);
  const cosAlt = Math.cos((altitudeDeg * Math.PI) / 180);
  const beams = LIGHTS.map(([turnDeg, weight]) => {
    const gridRad = ((fromDeg + turnDeg) * Math.PI) / 180 - convergenceRad;
    return { east: cosAlt * Math.sin(gridRad), north: cosAlt * Math.cos(gridRad), weight };
  });
  const shade = new Float32Array(cellCount(grid));
  forEachGradient(grid, (cell, riseEast, riseNorth) => {
    const east = riseEast * exaggeration;
    const north = riseNorth * exaggeration;
    const length = Math.sqrt(1 + east * east + north * north);
    let sum = 0;
    for (const beam of beams) {
      const cosine = (sinAlt - east * beam.east - north * beam.north) / length;
      if (cosine > 0) sum += beam.weight * cosine;
      else if (Number.isNaN(cosine)) sum = cosine;
    }
    shade[cell] = sum;
  });
  return shade;
}
