import {
  acrossWind,
  alongWind,
  clipColumns,
  clipRows,
  EDGE_M,
  type ShelterTile,
  type WindRay,
} from './shelter-tile.ts';
import { DOWNWIND_REACH_H, UPWIND_REACH_H } from './weps.ts';
import { distanceNode } from './weps-table.ts';

/**
 * Lays the swath of one straight piece of even height on the cells it reaches: for each cell the deficit at its
 * distance from the centreline along the wind ray, where that is larger than what is there. Mutates `out`.
 * @param deficits deficit by distance node (see weps-table.ts), all factors of the piece in it.
 * @param out deficit of each cell of the tile.
 * Hot: rows are cut analytically, the inner loop is a table look-up.
 */
export function splatLine(
  tile: ShelterTile,
  ray: WindRay,
  xyM: Float64Array,
  heightM: number,
  deficits: Float32Array,
  out: Float32Array,
): void {
  const { upX, upY } = ray;
  const { columns, cellM, firstXM } = tile;
  const s1 = acrossWind(ray, xyM[0], xyM[1]);
  const s2 = acrossWind(ray, xyM[2], xyM[3]);
  if (Math.abs(s2 - s1) < EDGE_M) return;
  const t1 = alongWind(ray, xyM[0], xyM[1]);
  const slant = (alongWind(ray, xyM[2], xyM[3]) - t1) / (s2 - s1);
  const leastS = Math.min(s1, s2) - EDGE_M;
  const greatestS = Math.max(s1, s2) + EDGE_M;
  const leastD = -UPWIND_REACH_H * heightM + EDGE_M;
  const greatestD = DOWNWIND_REACH_H * heightM;

  const reachUp = UPWIND_REACH_H * heightM * upY;
  const reachDown = -DOWNWIND_REACH_H * heightM * upY;
  const [firstRow, lastRow] = clipRows(
    tile,
    Math.min(xyM[1], xyM[3]) + Math.min(reachUp, reachDown),
    Math.max(xyM[1], xyM[3]) + Math.max(reachUp, reachDown),
  );
  const ds = cellM * upY;
  const dd = -cellM * upX - slant * ds;
  const perMetre = distanceNode(1) / heightM - distanceNode(0) / heightM;
  const nodeZero = distanceNode(0);
  const dv = dd * perMetre;
  const span = new Int32Array(2);
  for (let row = firstRow; row <= lastRow; row++) {
    const y = tile.rowYM[row];
    const s0 = acrossWind(ray, firstXM, y);
    const d0 = alongWind(ray, firstXM, y) - t1 - slant * (s0 - s1);
    span[0] = 0;
    span[1] = columns - 1;
    clipColumns(span, s0, ds, leastS, greatestS);
    clipColumns(span, d0, dd, leastD, greatestD);
    const base = row * columns;
    const v0 = nodeZero + d0 * perMetre;
    for (let c = span[0]; c <= span[1]; c++) {
      const v = v0 + c * dv;
      const node = v | 0;
      const value = deficits[node] + (v - node) * (deficits[node + 1] - deficits[node]);
      if (value > out[base + c]) out[base + c] = value;
    }
  }
}
