import { toLonLat } from '../geo/frame.ts';
import type { Grid, GridSpec } from '../numeric/grid.ts';
import type { CellPoint } from '../numeric/level-lines.ts';
import { coarserPart } from './band-regions.ts';
import type { MapPlacement } from './map-placement.ts';
import type { PointMm } from './page-model.ts';
import type { PlanPageInput } from './plan-input.ts';

/** Cells finer than this on paper are averaged: nobody sees them, and a printer need not draw them. */
const FINEST_CELL_MM = 0.4;

/**
 * Where points of a raster lie on the paper: bilinear between its four corners, which over one page departs from the
 * true place by less than a thousandth of a millimetre.
 */
export function cellsOnPaper(spec: GridSpec, input: PlanPageInput, placement: MapPlacement) {
  const corner = (column: number, row: number) =>
    placement.onPaper(
      toLonLat(input.frame, [spec.westM + column * spec.cellM, spec.northM - row * spec.cellM]),
    );
  const [nw, ne] = [corner(0, 0), corner(spec.columns, 0)];
  const [sw, se] = [corner(0, spec.rows), corner(spec.columns, spec.rows)];
  return ([column, row]: CellPoint): PointMm => {
    const u = column / spec.columns;
    const v = row / spec.rows;
    const mix = (axis: 0 | 1) =>
      (1 - v) * ((1 - u) * nw[axis] + u * ne[axis]) + v * ((1 - u) * sw[axis] + u * se[axis]);
    return [mix(0), mix(1)];
  };
}

/** The part of the raster that the frame shows, no finer than paper can show. */
export function partOnPage(grid: Grid, input: PlanPageInput, placement: MapPlacement): Grid | null {
  const { boxMm } = placement;
  const onPaper = cellsOnPaper(grid, input, placement);
  const origin = onPaper([0, 0]);
  // The paper's steps for one column and one row; inverted to find the cells under the frame's corners.
  const [ax, ay] = [0, 1].map((axis) => (onPaper([grid.columns, 0])[axis] - origin[axis]) / grid.columns);
  const [bx, by] = [0, 1].map((axis) => (onPaper([0, grid.rows])[axis] - origin[axis]) / grid.rows);
  const determinant = ax * by - ay * bx;
  const corners = [0, 1, 2, 3].map((corner) => {
    const x = boxMm.xMm + (corner % 2) * boxMm.widthMm - origin[0];
    const y = boxMm.yMm + (corner >> 1) * boxMm.heightMm - origin[1];
    return [(x * by - y * bx) / determinant, (y * ax - x * ay) / determinant];
  });
  const range = (axis: 0 | 1, size: number) => {
    const along = corners.map((corner) => corner[axis]);
    const first = Math.max(0, Math.floor(Math.min(...along)) - 1);
    const end = Math.min(size, Math.ceil(Math.max(...along)) + 1);
    return { first, count: end - first };
  };
  const columns = range(0, grid.columns);
  const rows = range(1, grid.rows);
  if (columns.count <= 0 || rows.count <= 0) return null;
  const factor = Math.max(1, Math.floor(FINEST_CELL_MM / placement.paperMm(grid.cellM)));
  return coarserPart(
    grid,
    { firstColumn: columns.first, firstRow: rows.first, columns: columns.count, rows: rows.count },
    factor,
  );
}
