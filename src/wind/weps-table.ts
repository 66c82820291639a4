import { LANE_BYTES, LANES, NODES_PER_HEIGHT, ROW_BYTES } from './kernel/assembly/layout.ts';
import type { ShelterKernel } from './kernel/kernel.ts';
import {
  barrierPorosity,
  DOWNWIND_REACH_H,
  frictionShareOfBarrier,
  MAX_WEPS_POROSITY,
  UPWIND_REACH_H,
} from './weps.ts';

/**
 * The WEPS function tabulated as a deficit 1 - f over (square root of barrier porosity) x (distance), because the
 * shelter kernels ask for it hundreds of millions of times. Rows are spaced evenly in the square root: the function
 * is steepest near porosity 0. Interpolation error below 4e-4 for barrier porosities above 1e-4, and 5e-5 above 0.01.
 */
const ROWS = 256;

/** Distance nodes a row: x = node / NODES_PER_HEIGHT - UPWIND_REACH_H. One spare at the end, so that node + 1 exists. */
export const DISTANCE_NODES = (UPWIND_REACH_H + DOWNWIND_REACH_H) * NODES_PER_HEIGHT + 2;
const MAX_ROOT = Math.sqrt(barrierPorosity(MAX_WEPS_POROSITY, Number.POSITIVE_INFINITY));
const ROWS_PER_ROOT = (ROWS - 1) / MAX_ROOT;

export interface DeficitTable {
  /** ROWS * DISTANCE_NODES, row-major. */
  readonly deficit: Float32Array;
  /** Largest deficit of each row: the quietest place in the lee. */
  readonly largest: Float32Array;
}

/** Built once a thread (about 15 ms). */
let built: DeficitTable | null = null;

export function deficitTable(): DeficitTable {
  if (built) return built;
  const deficit = new Float32Array(ROWS * DISTANCE_NODES);
  const largest = new Float32Array(ROWS);
  for (let row = 0; row < ROWS; row++) {
    const pb = (row / ROWS_PER_ROOT) ** 2;
    for (let node = 0; node < DISTANCE_NODES; node++) {
      const x = Math.min(DOWNWIND_REACH_H, node / NODES_PER_HEIGHT - UPWIND_REACH_H);
      const value = 1 - frictionShareOfBarrier(pb, x);
      deficit[row * DISTANCE_NODES + node] = value;
      if (value > largest[row]) largest[row] = value;
    }
  }
  built = { deficit, largest };
  return built;
}

/** Where a barrier falls in the table: its fractional row, and what the deficit there is multiplied by. */
export const tableRow = (p: number, w: number): number =>
  Math.sqrt(barrierPorosity(Math.min(p, MAX_WEPS_POROSITY), w)) * ROWS_PER_ROOT;
export const overPorousFactor = (p: number): number =>
  p <= MAX_WEPS_POROSITY ? 1 : Math.max(0, (1 - p) / (1 - MAX_WEPS_POROSITY));

/** Fractional node of a distance of x heights. */
export const distanceNode = (x: number): number => (x + UPWIND_REACH_H) * NODES_PER_HEIGHT;

/** Bilinear deficit at a fractional row and node. */
export function deficitAt(table: DeficitTable, row: number, node: number): number {
  const r = Math.min(ROWS - 2, Math.floor(row));
  const n = Math.floor(node);
  const u = row - r;
  const v = node - n;
  const i = r * DISTANCE_NODES + n;
  const { deficit } = table;
  const near = deficit[i] + v * (deficit[i + 1] - deficit[i]);
  const next =
    deficit[i + DISTANCE_NODES] + v * (deficit[i + DISTANCE_NODES + 1] - deficit[i + DISTANCE_NODES]);
  return near + u * (next - near);
}

/** Largest deficit in the lee at a fractional row. */
export function largestDeficitAt(table: DeficitTable, row: number): number {
  const r = Math.min(ROWS - 2, Math.floor(row));
  return table.largest[r] + (row - r) * (table.largest[r + 1] - table.largest[r]);
}

/** One leaf state of a barrier: where it falls in the table, and what its deficits are multiplied by. */
export interface TablePlace {
  readonly row: number;
  readonly factor: number;
}

/** Where in a kernel the deficits of one barrier by distance are worked out: addresses. */
export interface LineRoom {
  /** The whole table, row by row. */
  readonly rows: number;
  readonly places: number;
  /** The deficits: LANES floats a node. */
  readonly deficits: number;
}

/** Nodes that the kernel may write beyond the last that is asked for. */
const SPARE_NODES = 3;

export function takeLineRoom(kernel: ShelterKernel): LineRoom {
  const { deficit } = deficitTable();
  const room = {
    rows: kernel.take(4 * (deficit.length + SPARE_NODES)),
    places: kernel.take(LANES * ROW_BYTES),
    deficits: kernel.take((DISTANCE_NODES + SPARE_NODES) * LANE_BYTES),
  };
  kernel.floats.set(deficit, room.rows / 4);
  return room;
}

/**
 * Writes the deficits of one barrier in some leaf states, one beside the other, for the nodes `from` to `to`.
 * @param places one for each lane; fewer than there are lanes: the last stands for those that are missing.
 * @param reachM distance to which the barrier shelters in full; beyond it in inverse proportion.
 */
export function fillDeficits(
  kernel: ShelterKernel,
  room: LineRoom,
  places: readonly TablePlace[],
  { heightM, reachM }: { readonly heightM: number; readonly reachM: number },
  [from, to]: readonly [number, number],
): void {
  const { integers, floats } = kernel;
  for (let lane = 0; lane < LANES; lane++) {
    const { row, factor } = places[Math.min(lane, places.length - 1)];
    const before = Math.min(ROWS - 2, Math.floor(row));
    const at = (room.places + lane * ROW_BYTES) / 4;
    integers[at] = room.rows + 4 * before * DISTANCE_NODES;
    integers[at + 1] = room.rows + 4 * (before + 1) * DISTANCE_NODES;
    floats[at + 2] = row - before;
    floats[at + 3] = factor;
  }
  kernel.fillLine(room.places, (reachM / heightM) * NODES_PER_HEIGHT, from, to, room.deficits);
}
