/**
 * Hot code: for each direction, the optical depth of everything between the cells of a tile and that point of the
 * sky; then 1 - exp(-depth), times what the direction counts for, is added to the losses of the periods it belongs
 * to. Cells that nothing shades are never touched, so open ground keeps exactly what the sky gives.
 */
import { lossOfDepth } from './beer-table.ts';
import { addCrown, addPrism, clearWorkbench, type Foliage, type Workbench } from './depth-layers.ts';
import { markBehindLand, type TileHorizons } from './horizon.ts';
import type { PlannedDirection } from './light-plan.ts';
import type { ShadowTile } from './shadow-tile.ts';

/**
 * Adds the losses of one direction.
 * @param losses one array of the tile's cells a slot: mutated
 * @param landLosses the same for the land alone, for the first slots (hours by month): mutated; null where nobody asks
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
  for (let i = 0; i < foliage.crowns.count; i++) addCrown(bench, tile, foliage, i, direction);
  for (let i = 0; i < foliage.caster.prisms.count; i++) addPrism(bench, tile, foliage, i, direction);

  const { depth } = bench;
  for (let state = 0; state < states; state++) {
    const slots = direction.slots[state];
    const weights = direction.weights[state];
    if (slots.length === 0) continue;
    // The first two slots (as a rule hours and photons of one month, or the sky's one) are served on the way.
    const sumA = losses[slots[0]];
    const weightA = weights[0];
    const sumB = losses[slots[slots.length > 1 ? 1 : 0]];
    const weightB = slots.length > 1 ? weights[1] : 0;
    for (let r = 0; r < rows; r++) {
      const from = r * columns + touchedFirst[r];
      const to = r * columns + touchedEnd[r];
      for (let i = from; i < to; i++) {
        const share = solid[i] ? 1 : lossOfDepth(depth[i * states + state]);
        loss[i] = share;
        sumA[i] += weightA * share;
        sumB[i] += weightB * share;
      }
      for (let s = 2; s < slots.length; s++) {
        const sum = losses[slots[s]];
        const weight = weights[s];
        for (let i = from; i < to; i++) sum[i] += weight * loss[i];
      }
    }
    if (!anyLand || !landLosses) continue;
    for (let s = 0; s < slots.length && slots[s] < landLosses.length; s++) {
      const sum = landLosses[slots[s]];
      const weight = weights[s];
      for (let i = 0; i < cells; i++) if (behind[i]) sum[i] += weight;
    }
  }
}
