import type { Frame, LocalXY } from '../geo/frame.ts';
import { ringToLocal } from '../geo/rasterise.ts';
import { cellCentreX, cellCentreY, type Grid } from '../numeric/grid.ts';
import type { SiteFeature } from '../site/document.ts';

/** Indices, rising, of the cells above 0 whose centres lie inside a feature or no farther than `reachM` from it. */
export function cellsNear(grid: Grid, frame: Frame, feature: SiteFeature, reachM: number): Uint32Array {
  const { geometry } = feature;
  const isArea = geometry.type === 'Polygon';
  const lines: LocalXY[][] =
    geometry.type === 'Polygon'
      ? geometry.coordinates.map((ring) => ringToLocal(frame, ring))
      : [ringToLocal(frame, geometry.type === 'Point' ? [geometry.coordinates] : geometry.coordinates)];
  let [west, east, south, north] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const [x, y] of lines.flat()) {
    west = Math.min(west, x);
    east = Math.max(east, x);
    south = Math.min(south, y);
    north = Math.max(north, y);
  }
  const { columns, rows, cellM, values } = grid;
  const within = (at: number, count: number) => Math.min(count, Math.max(0, at));
  const c0 = within(Math.floor((west - reachM - grid.westM) / cellM), columns);
  const c1 = within(Math.ceil((east + reachM - grid.westM) / cellM), columns);
  const r0 = within(Math.floor((grid.northM - north - reachM) / cellM), rows);
  const r1 = within(Math.ceil((grid.northM - south + reachM) / cellM), rows);
  const cells: number[] = [];
  for (let r = r0; r < r1; r++)
    for (let c = c0; c < c1; c++) {
      const cell = r * columns + c;
      if (values[cell] > 0 && isNear(cellCentreX(grid, c), cellCentreY(grid, r))) cells.push(cell);
    }
  return Uint32Array.from(cells);

  function isNear(xM: number, yM: number): boolean {
    let inside = false;
    for (const line of lines)
      for (let k = 0; k < line.length; k++) {
        const [ax, ay] = line[k];
        const [bx, by] = line[Math.min(k + 1, line.length - 1)];
        if (ay > yM !== by > yM && ax + ((yM - ay) * (bx - ax)) / (by - ay) > xM) inside = !inside;
        if (distanceToSideM(xM - ax, yM - ay, bx - ax, by - ay) <= reachM) return true;
      }
    return isArea && inside;
  }
}

/** Distance of (px, py) from the straight side between the origin and (dx, dy). */
function distanceToSideM(px: number, py: number, dx: number, dy: number): number {
  const length2 = dx * dx + dy * dy;
  const along = length2 > 0 ? Math.min(1, Math.max(0, (px * dx + py * dy) / length2)) : 0;
  return Math.hypot(px - along * dx, py - along * dy);
}
