/**
 * Hot code: the optical depth of many things laid over one another on a tile, seen from one direction.
 */
import { CROWN_DEPTH_OFF, CROWN_DEPTH_ON, CROWN_STRIDE, type CrownSet } from '../crowns/crown-set.ts';
import { PRISM_DEPTH_OFF, PRISM_DEPTH_ON, PRISM_STRIDE } from '../crowns/prism-set.ts';
import { castCrown } from './cast-crown.ts';
import { castPrism, type PrismCaster } from './cast-prism.ts';
import type { PlannedDirection } from './light-plan.ts';
import { emptyShadow, type Shadow, type ShadowTile, TILE_EDGE } from './shadow-tile.ts';

const TILE_CELLS = TILE_EDGE * TILE_EDGE;

/** Room that is used again for each direction. */
export interface Workbench {
  readonly shadow: Shadow;
  /** Optical depth: cell * states + state, for the number of states of the direction in hand. */
  readonly depth: Float32Array;
  /** 1 where something solid stands in the way. */
  readonly solid: Uint8Array;
  /** 1 where the land does. */
  readonly behind: Uint8Array;
  readonly loss: Float32Array;
  readonly touchedFirst: Int32Array;
  readonly touchedEnd: Int32Array;
  readonly depthPerM: Float64Array;
}

/** @param mostStates the most leaf states any direction has. */
export const workbench = (mostStates: number): Workbench => ({
  shadow: emptyShadow(),
  depth: new Float32Array(TILE_CELLS * mostStates),
  solid: new Uint8Array(TILE_CELLS),
  behind: new Uint8Array(TILE_CELLS),
  loss: new Float32Array(TILE_CELLS),
  touchedFirst: new Int32Array(TILE_EDGE),
  touchedEnd: new Int32Array(TILE_EDGE),
  depthPerM: new Float64Array(mostStates),
});

export interface Foliage {
  readonly crowns: CrownSet;
  readonly caster: PrismCaster;
  readonly classCount: number;
}

export function clearWorkbench(bench: Workbench, tile: ShadowTile, states: number): void {
  bench.depth.fill(0, 0, tile.cells * states);
  bench.solid.fill(0, 0, tile.cells);
  bench.touchedFirst.fill(tile.columns, 0, tile.rows);
  bench.touchedEnd.fill(0, 0, tile.rows);
}

/** Adds crown i of the scene. @returns whether it can reach the tile. */
export function addCrown(
  bench: Workbench,
  tile: ShadowTile,
  foliage: Foliage,
  i: number,
  direction: PlannedDirection,
): boolean {
  const { crowns, classCount } = foliage;
  if (!castCrown(tile, crowns, i, direction.ray, bench.shadow)) return false;
  const on = crowns.values[i * CROWN_STRIDE + CROWN_DEPTH_ON];
  const off = crowns.values[i * CROWN_STRIDE + CROWN_DEPTH_OFF];
  addDepth(tile, direction, on, off, crowns.leafClass[i], classCount, bench);
  return true;
}

/** Adds prism i of the scene. @returns whether it can reach the tile. */
export function addPrism(
  bench: Workbench,
  tile: ShadowTile,
  foliage: Foliage,
  i: number,
  direction: PlannedDirection,
): boolean {
  const { caster, classCount } = foliage;
  const { prisms } = caster;
  if (!castPrism(tile, caster, i, direction.ray, bench.shadow)) return false;
  if (prisms.solid[i]) {
    addSolid(tile, bench);
    return true;
  }
  const on = prisms.values[i * PRISM_STRIDE + PRISM_DEPTH_ON];
  const off = prisms.values[i * PRISM_STRIDE + PRISM_DEPTH_OFF];
  addDepth(tile, direction, on, off, prisms.leafClass[i], classCount, bench);
  return true;
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
  const { shadow, depth, depthPerM } = bench;
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
    for (let i = from; i < to; i++) {
      const path = pathM[i];
      if (path === 0) continue;
      const at = i * states;
      for (let state = 0; state < states; state++) depth[at + state] += depthPerM[state] * path;
    }
  }
}
