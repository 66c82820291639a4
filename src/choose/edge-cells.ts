import type { LocalXY } from '../geo/frame.ts';
import { cellCentreX, cellCentreY, cellCount, type GridSpec } from '../numeric/grid.ts';
import { isInside } from '../site/plane-geometry.ts';

/** An edge on the ground: the axis of a strip, or the outline of a wood (its first corner repeated at the end). */
export interface EdgeShape {
  readonly line: readonly LocalXY[];
  readonly closed: boolean;
  /** From the line to its near side, m. */
  readonly halfWidthM: number;
}

/** Cells beside an edge: what is inside it, or beyond its ends and corners, is on no side. Row-major as the grid. */
export interface BesideEdge {
  /** From its near side, m; NaN where a cell is not beside it. */
  readonly distanceM: Float32Array;
  /** Left and right of a strip along its line (0, 1); a wood's faces by eight points from grid north, clockwise. */
  readonly side: Uint8Array;
  /** Grid azimuth of the way from the edge, radians. */
  readonly facingRad: Float32Array;
}

/** At bends of this much and more the ground outside lies beyond an end of both pieces. */
const SHARP_COS = Math.cos(Math.PI / 4);

/** @param mask 1 for cells that count. */
export function besideEdge(grid: GridSpec, mask: Uint8Array, shape: EdgeShape): BesideEdge {
  const cells = cellCount(grid);
  const distanceM = new Float32Array(cells).fill(Number.NaN);
  const side = new Uint8Array(cells);
  const facingRad = new Float32Array(cells);
  const { line, closed, halfWidthM } = shape;
  const open = openVertices(line, closed);
  for (let cell = 0; cell < cells; cell++) {
    if (!mask[cell]) continue;
    const x = cellCentreX(grid, cell % grid.columns);
    const y = cellCentreY(grid, Math.floor(cell / grid.columns));
    const near = nearestOf(line, x, y);
    if (near.vertex >= 0 && !open[near.vertex]) continue;
    if (near.distanceM < halfWidthM || (closed && isInside([x, y], [line]))) continue;
    const facing = Math.atan2(x - near.x, y - near.y);
    distanceM[cell] = near.distanceM - halfWidthM;
    facingRad[cell] = facing;
    side[cell] = closed ? Math.round((facing / (2 * Math.PI) + 1) * 8) % 8 : near.left ? 0 : 1;
  }
  return { distanceM, side, facingRad };
}

/** 1 for vertices beside which the ground counts: bends that are not sharp, never an end. */
function openVertices(line: readonly LocalXY[], closed: boolean): Uint8Array {
  const open = new Uint8Array(line.length);
  const last = line.length - 1;
  for (let i = 0; i <= last; i++) {
    if (!closed && (i === 0 || i === last)) continue;
    const before = line[i === 0 ? last - 1 : i - 1];
    const after = line[i === last ? 1 : i + 1];
    const [ax, ay] = [line[i][0] - before[0], line[i][1] - before[1]];
    const [bx, by] = [after[0] - line[i][0], after[1] - line[i][1]];
    const cos = (ax * bx + ay * by) / (Math.hypot(ax, ay) * Math.hypot(bx, by));
    if (cos > SHARP_COS) open[i] = 1;
  }
  return open;
}

interface Nearest {
  readonly distanceM: number;
  readonly x: number;
  readonly y: number;
  /** Index of the vertex that is nearest; -1: a place between two. */
  readonly vertex: number;
  /** Left of the piece, looking along it. */
  readonly left: boolean;
}

function nearestOf(line: readonly LocalXY[], x: number, y: number): Nearest {
  let best: Nearest = { distanceM: Number.POSITIVE_INFINITY, x, y, vertex: -1, left: false };
  for (let i = 1; i < line.length; i++) {
    const [ax, ay] = line[i - 1];
    const [dx, dy] = [line[i][0] - ax, line[i][1] - ay];
    const squared = dx * dx + dy * dy;
    if (squared === 0) continue;
    const along = ((x - ax) * dx + (y - ay) * dy) / squared;
    const t = Math.min(1, Math.max(0, along));
    const [nx, ny] = [ax + t * dx, ay + t * dy];
    const distanceM = Math.hypot(x - nx, y - ny);
    if (distanceM >= best.distanceM) continue;
    const vertex = along <= 0 ? i - 1 : along >= 1 ? i : -1;
    best = { distanceM, x: nx, y: ny, vertex, left: dx * (y - ay) - dy * (x - ax) > 0 };
  }
  return best;
}
