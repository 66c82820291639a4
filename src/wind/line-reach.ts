import { acrossWind, alongWind, EDGE_M, type ShelterTile, type WindRay } from './shelter-tile.ts';
import { DOWNWIND_REACH_H, UPWIND_REACH_H } from './weps.ts';
import { DISTANCE_NODES, distanceNode } from './weps-table.ts';

/**
 * First and last distance node that cells of the tile can ask for behind one straight piece of a line, a node to spare
 * on either side; null where its swath misses the tile. For a small field far from most belts this spares most work.
 */
export function nodesOver(
  tile: ShelterTile,
  ray: WindRay,
  xyM: Float64Array,
  heightM: number,
): readonly [number, number] | null {
  const [east, south] = [tile.firstXM + (tile.columns - 1) * tile.cellM, tile.rowYM[tile.rows - 1]];
  let [leastS, greatestS, leastT, greatestT] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const x of [tile.firstXM, east])
    for (const y of [tile.rowYM[0], south]) {
      const [s, t] = [acrossWind(ray, x, y), alongWind(ray, x, y)];
      leastS = Math.min(leastS, s);
      greatestS = Math.max(greatestS, s);
      leastT = Math.min(leastT, t);
      greatestT = Math.max(greatestT, t);
    }
  const [s1, s2] = [acrossWind(ray, xyM[0], xyM[1]), acrossWind(ray, xyM[2], xyM[3])];
  if (Math.max(s1, s2) + EDGE_M < leastS || Math.min(s1, s2) - EDGE_M > greatestS) return null;
  const [t1, t2] = [alongWind(ray, xyM[0], xyM[1]), alongWind(ray, xyM[2], xyM[3])];
  const from = Math.max((leastT - Math.max(t1, t2)) / heightM, -UPWIND_REACH_H);
  const to = Math.min((greatestT - Math.min(t1, t2)) / heightM, DOWNWIND_REACH_H);
  if (from > to) return null;
  return [
    Math.max(0, Math.floor(distanceNode(from)) - 1),
    Math.min(DISTANCE_NODES - 1, Math.ceil(distanceNode(to)) + 1),
  ];
}
