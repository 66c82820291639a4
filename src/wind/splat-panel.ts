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
import {
  type DeficitTable,
  deficitAt,
  distanceNode,
  largestDeficitAt,
  overPorousFactor,
  tableRow,
} from './weps-table.ts';

/**
 * A part of a barrier between two wind rays: everything about it runs linearly from the first ray to the second.
 * Arrays hold the value on either ray. For a line entry and exit are the centreline.
 */
export interface Panel {
  /** Across-wind position of the two rays, rising. */
  readonly acrossM: readonly [number, number];
  /** Along-wind position at which the wind enters and leaves. */
  readonly entryM: readonly [number, number];
  readonly exitM: readonly [number, number];
  readonly entryHeightM: readonly [number, number];
  readonly exitHeightM: readonly [number, number];
  /** Width the wind crosses; null: from entry to exit. */
  readonly widthM: number | null;
}

/** How the height of the place where the wind crosses changes the porosity and the strength of a barrier. */
export interface PanelEffects {
  readonly porosityAt: (heightM: number) => number;
  readonly strengthAt: (heightM: number) => number;
  /** Connected length across the wind, metres; infinite where short things count in full. */
  readonly reachM: number;
}

/**
 * Lays one panel on the cells it reaches, as splatLine does, for uneven heights and for areas. Upwind distance counts
 * from the edge where the wind enters, lee distance from the edge where it leaves. Inside an area the deficit settles
 * from its value at the nearer edge towards the largest of the lee within about a height of that edge (our guess:
 * deep inside a wood it is as still as the quietest place behind it). Mutates `out`.
 */
export function splatPanel(
  tile: ShelterTile,
  ray: WindRay,
  panel: Panel,
  effects: PanelEffects,
  table: DeficitTable,
  out: Float32Array,
): void {
  const { acrossM, entryM, exitM, entryHeightM, exitHeightM } = panel;
  const breadth = acrossM[1] - acrossM[0];
  if (!(breadth >= EDGE_M)) return;
  const highest = Math.max(...entryHeightM, ...exitHeightM);
  const from = Math.min(...entryM) - UPWIND_REACH_H * highest;
  const to = Math.max(...exitM) + DOWNWIND_REACH_H * highest;
  // y = s * (-upX) - t * upY
  const ys = [acrossM[0], acrossM[1]].flatMap((s) => [
    -s * ray.upX - from * ray.upY,
    -s * ray.upX - to * ray.upY,
  ]);
  const [firstRow, lastRow] = clipRows(tile, Math.min(...ys), Math.max(...ys));
  const ds = tile.cellM * ray.upY;
  const dt = -tile.cellM * ray.upX;
  const span = new Int32Array(2);
  for (let row = firstRow; row <= lastRow; row++) {
    const y = tile.rowYM[row];
    const s0 = acrossWind(ray, tile.firstXM, y);
    const t0 = alongWind(ray, tile.firstXM, y);
    span[0] = 0;
    span[1] = tile.columns - 1;
    clipColumns(span, s0, ds, acrossM[0] - EDGE_M, acrossM[1] + EDGE_M);
    clipColumns(span, t0, dt, from, to);
    for (let c = span[0]; c <= span[1]; c++) {
      const t = t0 + c * dt;
      const q = Math.min(1, Math.max(0, (s0 + c * ds - acrossM[0]) / breadth));
      const entry = entryM[0] + q * (entryM[1] - entryM[0]);
      const exit = exitM[0] + q * (exitM[1] - exitM[0]);
      const inside = t > entry && t < exit;
      // Inside, the nearer edge counts.
      const atEntry = inside ? t - entry < exit - t : t <= entry;
      const heights = atEntry ? entryHeightM : exitHeightM;
      const height = heights[0] + q * (heights[1] - heights[0]);
      if (!(height > 0)) continue;
      const distance = t - (atEntry ? entry : exit);
      const x = distance / height;
      if (!inside && !(x > -UPWIND_REACH_H + EDGE_M / height && x <= DOWNWIND_REACH_H)) continue;
      const porosity = effects.porosityAt(height);
      const tableAt = tableRow(porosity, (panel.widthM ?? exit - entry) / height);
      let deficit = deficitAt(table, tableAt, distanceNode(inside ? 0 : x));
      if (inside) {
        const still = largestDeficitAt(table, tableAt);
        deficit = still - (still - deficit) * Math.exp(-Math.abs(x));
      } else if (Math.abs(distance) > effects.reachM) deficit *= effects.reachM / Math.abs(distance);
      deficit *= overPorousFactor(porosity) * effects.strengthAt(height);
      const i = row * tile.columns + c;
      if (deficit > out[i]) out[i] = deficit;
    }
  }
}

/**
 * Panels of an area: the slabs between the rays through its vertices, each cut into the stretches inside the ring.
 * @param ring x, y pairs; @param heightM top at each vertex.
 */
export function areaPanels(ray: WindRay, ring: Float64Array, heightM: Float64Array): Panel[] {
  const count = heightM.length;
  const s = Float64Array.from({ length: count }, (_, i) => acrossWind(ray, ring[2 * i], ring[2 * i + 1]));
  const t = Float64Array.from({ length: count }, (_, i) => alongWind(ray, ring[2 * i], ring[2 * i + 1]));
  const rays = [...s].sort((a, b) => a - b);
  const panels: Panel[] = [];
  for (let slab = 0; slab + 1 < rays.length; slab++) {
    const acrossM = [rays[slab], rays[slab + 1]] as const;
    if (acrossM[1] - acrossM[0] < EDGE_M) continue;
    const middle = (acrossM[0] + acrossM[1]) / 2;
    const crossings: { middle: number; along: [number, number]; height: [number, number] }[] = [];
    for (let i = 0; i < count; i++) {
      const j = (i + 1) % count;
      if (s[i] < middle === s[j] < middle) continue;
      const at = (across: number, values: Float64Array): number =>
        values[i] + ((across - s[i]) / (s[j] - s[i])) * (values[j] - values[i]);
      crossings.push({
        middle: at(middle, t),
        along: [at(acrossM[0], t), at(acrossM[1], t)],
        height: [at(acrossM[0], heightM), at(acrossM[1], heightM)],
      });
    }
    crossings.sort((a, b) => a.middle - b.middle);
    for (let k = 0; k + 1 < crossings.length; k += 2) {
      panels.push({
        acrossM,
        entryM: crossings[k].along,
        exitM: crossings[k + 1].along,
        entryHeightM: crossings[k].height,
        exitHeightM: crossings[k + 1].height,
        widthM: null,
      });
    }
  }
  return panels;
}

/** The single panel of a straight piece of line; null where the wind runs along it. */
export function linePanel(
  ray: WindRay,
  xyM: Float64Array,
  heightM: Float64Array,
  widthM: number,
): Panel | null {
  const s = [acrossWind(ray, xyM[0], xyM[1]), acrossWind(ray, xyM[2], xyM[3])];
  const t = [alongWind(ray, xyM[0], xyM[1]), alongWind(ray, xyM[2], xyM[3])];
  if (Math.abs(s[1] - s[0]) < EDGE_M) return null;
  const [a, b] = s[0] < s[1] ? [0, 1] : [1, 0];
  const along = [t[a], t[b]] as const;
  const height = [heightM[a], heightM[b]] as const;
  return {
    acrossM: [s[a], s[b]],
    entryM: along,
    exitM: along,
    entryHeightM: height,
    exitHeightM: height,
    widthM,
  };
}
