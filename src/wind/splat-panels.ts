import type { Panel } from './barrier-panels.ts';
import { LANES } from './kernel/assembly/layout.ts';
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

/** How the height of the place where the wind crosses changes the porosity and the strength of a barrier. */
export interface PanelEffects {
  readonly porosityAt: (heightM: number) => number;
  readonly strengthAt: (heightM: number) => number;
  /** Distance to which a short thing shelters in full, metres. */
  readonly reachM: number;
  /** Whether it grows stiller away from the edges of an area. */
  readonly insideWoods: boolean;
}

/** Across a panel, porosity and strength are worked out this often, in heights, and interpolated between. */
const STEP_H = 0.2;
const MOST_STEPS = 32;

/** What the cells of a panel look up: values at evenly spaced rays across it, for the entry and for the exit. */
interface PanelProfile {
  readonly panel: Panel;
  readonly steps: number;
  readonly entryPorosity: Float64Array;
  readonly exitPorosity: Float64Array;
  readonly entryFactor: Float64Array;
  readonly exitFactor: Float64Array;
}

const between = (pair: readonly [number, number], q: number): number => pair[0] + q * (pair[1] - pair[0]);
const lookUp = (values: Float64Array, at: number): number => {
  const i = Math.min(values.length - 2, Math.floor(at));
  return values[i] + (at - i) * (values[i + 1] - values[i]);
};

function profileOf(panel: Panel, effects: PanelEffects): PanelProfile {
  const least = Math.min(...panel.entryHeightM, ...panel.exitHeightM);
  const breadth = panel.acrossM[1] - panel.acrossM[0];
  const steps = Math.min(MOST_STEPS, Math.max(2, Math.ceil(breadth / (STEP_H * Math.max(least, 0.1)))));
  const porosities = (heights: readonly [number, number]) =>
    Float64Array.from({ length: steps + 1 }, (_, i) => effects.porosityAt(between(heights, i / steps)));
  const factors = (heights: readonly [number, number]) =>
    Float64Array.from({ length: steps + 1 }, (_, i) => {
      const height = between(heights, i / steps);
      return height > 0 ? overPorousFactor(effects.porosityAt(height)) * effects.strengthAt(height) : 0;
    });
  return {
    panel,
    steps,
    entryPorosity: porosities(panel.entryHeightM),
    exitPorosity: porosities(panel.exitHeightM),
    entryFactor: factors(panel.entryHeightM),
    exitFactor: factors(panel.exitHeightM),
  };
}

/** Panels between the same two rays: an area with a bay has several. */
interface Slab {
  readonly acrossM: readonly [number, number];
  readonly profiles: PanelProfile[];
}

function slabsOf(panels: readonly Panel[], effects: PanelEffects): Slab[] {
  const slabs: Slab[] = [];
  for (const panel of panels) {
    const last = slabs[slabs.length - 1];
    const profile = profileOf(panel, effects);
    if (last && last.acrossM[0] === panel.acrossM[0]) last.profiles.push(profile);
    else slabs.push({ acrossM: panel.acrossM, profiles: [profile] });
  }
  return slabs;
}

/** Deficit that one panel leaves at the along-wind position t, on the ray at share q across it. */
function panelDeficit(
  profile: PanelProfile,
  t: number,
  q: number,
  { reachM, insideWoods }: PanelEffects,
  table: DeficitTable,
): number {
  const { panel } = profile;
  const entry = between(panel.entryM, q);
  const exit = between(panel.exitM, q);
  const inside = t > entry && t < exit;
  // Inside, the nearer edge counts.
  const atEntry = inside ? t - entry < exit - t : t <= entry;
  const height = between(atEntry ? panel.entryHeightM : panel.exitHeightM, q);
  if (!(height > 0)) return 0;
  const distance = t - (atEntry ? entry : exit);
  const x = distance / height;
  if (!inside && !(x > -UPWIND_REACH_H + EDGE_M / height && x <= DOWNWIND_REACH_H)) return 0;
  const at = q * profile.steps;
  const porosity = lookUp(atEntry ? profile.entryPorosity : profile.exitPorosity, at);
  // The width is taken exactly: at the corner of a solid it vanishes, and the function is steepest there.
  const row = tableRow(porosity, (panel.widthM ?? exit - entry) / height);
  const factor = lookUp(atEntry ? profile.entryFactor : profile.exitFactor, at);
  if (inside && !insideWoods) return factor * deficitAt(table, row, distanceNode(0));
  if (inside) {
    const still = largestDeficitAt(table, row);
    return factor * (still - (still - deficitAt(table, row, distanceNode(0))) * Math.exp(-Math.abs(x)));
  }
  const away = Math.abs(distance);
  return factor * deficitAt(table, row, distanceNode(x)) * (away > reachM ? reachM / away : 1);
}

/**
 * Lays the panels of one piece on the cells it reaches, as the kernel does those of a straight piece, for uneven heights and for areas. Upwind
 * distance counts from the edge where the wind enters, lee distance from the edge where it leaves. Inside an area the
 * deficit settles from its value at the nearer edge towards the largest of the lee, exponentially with the distance
 * from that edge in heights (our guess: deep inside a wood it is as still as the quietest place behind it).
 * @param panels rising across the wind. @param out deficits of the tile from `at` on, one float for each lane of a cell,
 * raised in the given lanes where these are larger. Mutates `out`.
 */
export function splatPanels(
  tile: ShelterTile,
  ray: WindRay,
  panels: readonly Panel[],
  effects: PanelEffects,
  table: DeficitTable,
  out: Float32Array,
  at: number,
  [firstLane, lastLane]: readonly [number, number],
): void {
  if (panels.length === 0) return;
  const slabs = slabsOf(panels, effects);
  const highest = Math.max(...panels.flatMap((panel) => [...panel.entryHeightM, ...panel.exitHeightM]));
  const from = Math.min(...panels.flatMap(({ entryM }) => entryM)) - UPWIND_REACH_H * highest;
  const to = Math.max(...panels.flatMap(({ exitM }) => exitM)) + DOWNWIND_REACH_H * highest;
  const leastS = slabs[0].acrossM[0];
  const greatestS = slabs[slabs.length - 1].acrossM[1];
  // y = -s * upX - t * upY
  const ys = [leastS, greatestS].flatMap((s) => [-s * ray.upX - from * ray.upY, -s * ray.upX - to * ray.upY]);
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
    clipColumns(span, s0, ds, leastS - EDGE_M, greatestS + EDGE_M);
    clipColumns(span, t0, dt, from, to);
    // Along a row the rays follow each other in order, so the slab is the last one or its neighbour.
    let k = ds > 0 ? 0 : slabs.length - 1;
    for (let c = span[0]; c <= span[1]; c++) {
      const s = s0 + c * ds;
      const t = t0 + c * dt;
      while (k + 1 < slabs.length && s > slabs[k].acrossM[1]) k++;
      while (k > 0 && s < slabs[k].acrossM[0]) k--;
      const { acrossM, profiles } = slabs[k];
      const q = Math.min(1, Math.max(0, (s - acrossM[0]) / (acrossM[1] - acrossM[0])));
      const i = at + (row * tile.columns + c) * LANES;
      for (const profile of profiles) {
        const deficit = panelDeficit(profile, t, q, effects, table);
        for (let lane = firstLane; lane <= lastLane; lane++)
          if (deficit > out[i + lane]) out[i + lane] = deficit;
      }
    }
  }
}
