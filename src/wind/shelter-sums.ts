import { sampleGrid } from '../numeric/grid.ts';
import { isInsideRing } from './footprint.ts';
import { GALE_NODES, type SeasonOfDirection } from './shelter-directions.ts';
import type { ShelterTile } from './shelter-tile.ts';
import type { ShelterRequest, ShelterResult } from './shelter-types.ts';

/** Sums over directions and leaf states for one season; deficits so that open ground stays exactly open. */
export interface SeasonSums {
  /** Sum of speed weight * (1 - f), m/s, and of gale share less that of open ground. */
  readonly speedDeficit: Float64Array;
  readonly galeChange: Float64Array;
  openSpeed: number;
  openGale: number;
}

export const newSums = (cells: number): SeasonSums => ({
  speedDeficit: new Float64Array(cells),
  galeChange: new Float64Array(cells),
  openSpeed: 0,
  openGale: 0,
});

/** Adds one direction over open ground. Mutates `sums`. */
export function addOpen(sums: SeasonSums, season: SeasonOfDirection | null): void {
  if (!season) return;
  sums.openSpeed += season.speedWeightMps;
  sums.openGale += season.frequency * season.galeShare[GALE_NODES];
}

/** Adds one direction in one leaf state on the cells of a tile. Mutates `sums`. Hot. */
export function accumulate(
  sums: SeasonSums,
  season: SeasonOfDirection | null,
  phaseWeight: number,
  tile: ShelterTile,
  deficits: Float32Array,
): void {
  if (!season || phaseWeight === 0) return;
  const { speedDeficit, galeChange } = sums;
  const { galeShare } = season;
  const speedWeight = season.speedWeightMps * phaseWeight;
  const galeWeight = season.frequency * phaseWeight;
  const openGale = galeShare[GALE_NODES];
  for (let i = 0, cell = tile.firstCell; i < deficits.length; i++, cell++) {
    const deficit = deficits[i];
    if (deficit === 0) continue;
    speedDeficit[cell] += speedWeight * deficit;
    const v = (1 - deficit) * GALE_NODES;
    const node = v | 0;
    const chance = galeShare[node] + (v - node) * (galeShare[node + 1] - galeShare[node]);
    galeChange[cell] += galeWeight * (chance - openGale);
  }
}

/** Turns the sums into the three bands. Mutates `result`. */
export function writeBands(
  { scene }: ShelterRequest,
  tiles: readonly ShelterTile[],
  [growing, rest]: SeasonSums[],
  [growingHours, restHours]: number[],
  { windShare, galeHours }: ShelterResult,
): void {
  const cells = growing.speedDeficit.length;
  const growingRun = growing.openSpeed * growingHours;
  const restRun = rest.openSpeed * restHours;
  const cut = (deficit: number, open: number): number => (open > 0 ? deficit / open : 0);
  const solids = scene.barriers.filter(
    (barrier) =>
      barrier.shape === 'area' && barrier.porosityOn === 0 && barrier.porosityOff === 0 && barrier.baseM <= 0,
  );
  for (const tile of tiles) {
    for (let row = 0, cell = tile.firstCell; row < tile.rows; row++) {
      const y = tile.rowYM[row];
      for (let column = 0; column < tile.columns; column++, cell++) {
        const x = tile.firstXM + column * tile.cellM;
        const missing =
          Number.isNaN(sampleGrid(scene.ground, x, y)) ||
          solids.some((solid) => isInsideRing(x, y, solid.xyM));
        if (missing) {
          for (let band = 0; band < 3; band++) {
            windShare[band * cells + cell] = Number.NaN;
            galeHours[band * cells + cell] = Number.NaN;
          }
          continue;
        }
        const cutGrowing = cut(growing.speedDeficit[cell], growing.openSpeed);
        const cutRest = cut(rest.speedDeficit[cell], rest.openSpeed);
        const run = growingRun + restRun;
        windShare[cell] = 1 - cutGrowing;
        windShare[cells + cell] = 1 - cutRest;
        windShare[2 * cells + cell] = 1 - (run > 0 ? (growingRun * cutGrowing + restRun * cutRest) / run : 0);
        const galeGrowing = Math.max(0, growing.openGale + growing.galeChange[cell]) * growingHours;
        const galeRest = Math.max(0, rest.openGale + rest.galeChange[cell]) * restHours;
        galeHours[cell] = galeGrowing;
        galeHours[cells + cell] = galeRest;
        galeHours[2 * cells + cell] = galeGrowing + galeRest;
      }
    }
  }
}
