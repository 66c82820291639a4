/**
 * Hot code: for each direction, the optical depth of everything between the cells of a tile and that point of the
 * sky; then 1 - exp(-depth), times what the direction counts for, is added to the losses of the periods it belongs
 * to. Cells that nothing shades are never touched, so open ground keeps exactly what the sky gives.
 */
import { CROWN_DEPTH_OFF, CROWN_DEPTH_ON, CROWN_STRIDE, type CrownSet } from '../crowns/crown-set.ts';
import { PRISM_DEPTH_OFF, PRISM_DEPTH_ON, PRISM_STRIDE } from '../crowns/prism-set.ts';
import { lossOfDepth } from './beer-table.ts';
import { castCrown } from './cast-crown.ts';
import { castPrism, type PrismCaster } from './cast-prism.ts';
import { markBehindLand, type TileHorizons } from './horizon.ts';
import type { PlannedDirection } from './light-plan.ts';
import { emptyShadow, type Shadow, type ShadowTile, TILE_EDGE } from './shadow-tile.ts';

const TILE_CELLS = TILE_EDGE * TILE_EDGE;
const MOST_STATES = 256;

/** Room that is used again for each direction. */
export interface Workbench {
  readonly shadow: Shadow;
  /** Optical depth by leaf state; grown as states need it. */
  readonly depth: Float32Array[];
  /** 1 where something solid stands in the way. */
  readonly solid: Uint8Array;
  /** 1 where the land does. */
  readonly behind: Uint8Array;
  readonly loss: Float32Array;
  readonly touchedFirst: Int32Array;
  readonly touchedEnd: Int32Array;
  readonly depthPerM: Float64Array;
}

export const workbench = (): Workbench => ({
  shadow: emptyShadow(),
  depth: [],
  solid: new Uint8Array(TILE_CELLS),
  behind: new Uint8Array(TILE_CELLS),
  loss: new Float32Array(TILE_CELLS),
  touchedFirst: new Int32Array(TILE_EDGE),
  touchedEnd: new Int32Array(TILE_EDGE),
  depthPerM: new Float64Array(MOST_STATES),
});

export interface Foliage {
  readonly crowns: CrownSet;
  readonly caster: PrismCaster;
  readonly classCount: number;
}

/**
 * Adds the losses of one direction.
 * @param losses one array of the tile's cells a slot: mutated
 * @param landLosses the same for the land alone: mutated; null where nobody asks
 */
export function accumulateLosses(
  tile: ShadowTile,
  foliage: Foliage,
  horizons: TileHorizons | null,
  direction: PlannedDirection,
  losses: readonly Float32Array[],
  landLosses: readonly Float32Array[] | null,
  bench: Workbench,
): void {
  const { ray, states } = direction;
  const { solid, behind, touchedFirst, touchedEnd, loss } = bench;
  const { columns, rows, cells } = tile;
  clearWorkbench(bench, tile, states);

  let anyLand = false;
  if (horizons) {
    anyLand = markBehindLand(tile, horizons, direction.gridAzimuthRad, ray.tanAltitude, behind);
    if (anyLand) {
      solid.set(behind.subarray(0, cells));
      touchedFirst.fill(0, 0, rows);
      touchedEnd.fill(columns, 0, rows);
    }
  }
  const { crowns, caster, classCount } = foliage;
  for (let i = 0; i < crowns.count; i++) {
    if (!castCrown(tile, crowns, i, ray, bench.shadow)) continue;
    const v = i * CROWN_STRIDE;
    addDepth(
      tile,
      direction,
      crowns.values[v + CROWN_DEPTH_ON],
      crowns.values[v + CROWN_DEPTH_OFF],
      crowns.leafClass[i],
      classCount,
      bench,
    );
  }
  const { prisms } = caster;
  for (let i = 0; i < prisms.count; i++) {
    if (!castPrism(tile, caster, i, ray, bench.shadow)) continue;
    if (prisms.solid[i]) {
      addSolid(tile, bench);
      continue;
    }
    const v = i * PRISM_STRIDE;
    addDepth(
      tile,
      direction,
      prisms.values[v + PRISM_DEPTH_ON],
      prisms.values[v + PRISM_DEPTH_OFF],
      prisms.leafClass[i],
      classCount,
      bench,
    );
  }

  for (let state = 0; state < states; state++) {
    const depth = bench.depth[state];
    const slots = direction.slots[state];
    const weights = direction.weights[state];
    for (let r = 0; r < rows; r++) {
      const from = r * columns + touchedFirst[r];
      const to = r * columns + touchedEnd[r];
      for (let i = from; i < to; i++) loss[i] = solid[i] ? 1 : lossOfDepth(depth[i]);
      for (let s = 0; s < slots.length; s++) {
        const sum = losses[slots[s]];
        const weight = weights[s];
        for (let i = from; i < to; i++) sum[i] += weight * loss[i];
      }
    }
    if (!anyLand || !landLosses) continue;
    for (let s = 0; s < slots.length; s++) {
      const sum = landLosses[slots[s]];
      const weight = weights[s];
      for (let i = 0; i < cells; i++) if (behind[i]) sum[i] += weight;
    }
  }
}

export function clearWorkbench(bench: Workbench, tile: ShadowTile, states: number): void {
  while (bench.depth.length < states) bench.depth.push(new Float32Array(TILE_CELLS));
  for (let state = 0; state < states; state++) bench.depth[state].fill(0, 0, tile.cells);
  bench.solid.fill(0, 0, tile.cells);
  bench.touchedFirst.fill(tile.columns, 0, tile.rows);
  bench.touchedEnd.fill(0, 0, tile.rows);
}

function touch(bench: Workbench, row: number): void {
  const { shadow, touchedFirst, touchedEnd } = bench;
  if (shadow.columnFirst[row] < touchedFirst[row]) touchedFirst[row] = shadow.columnFirst[row];
  if (shadow.columnEnd[row] > touchedEnd[row]) touchedEnd[row] = shadow.columnEnd[row];
}

function addSolid(tile: ShadowTile, bench: Workbench): void {
  const { shadow, solid } = bench;
  const { pathM, columnFirst, columnEnd } = shadow;
  for (let r = shadow.rowFirst; r < shadow.rowEnd; r++) {
    if (columnFirst[r] >= columnEnd[r]) continue;
    touch(bench, r);
    const end = r * tile.columns + columnEnd[r];
    for (let i = r * tile.columns + columnFirst[r]; i < end; i++) if (pathM[i] > 0) solid[i] = 1;
  }
}

function addDepth(
  tile: ShadowTile,
  direction: PlannedDirection,
  depthOn: number,
  depthOff: number,
  leafClass: number,
  classCount: number,
  bench: Workbench,
): void {
  const { shadow, depthPerM } = bench;
  const { pathM, columnFirst, columnEnd } = shadow;
  const { states, leafShare } = direction;
  for (let state = 0; state < states; state++) {
    const share = leafShare[state * classCount + leafClass];
    depthPerM[state] = share * depthOn + (1 - share) * depthOff;
  }
  for (let r = shadow.rowFirst; r < shadow.rowEnd; r++) {
    if (columnFirst[r] >= columnEnd[r]) continue;
    touch(bench, r);
    const from = r * tile.columns + columnFirst[r];
    const to = r * tile.columns + columnEnd[r];
    for (let state = 0; state < states; state++) {
      const depth = bench.depth[state];
      const k = depthPerM[state];
      for (let i = from; i < to; i++) depth[i] += k * pathM[i];
    }
  }
}
