import { sampleGrid } from '../numeric/grid.ts';
import { isInsideRing } from './footprint.ts';
import { GALE_NODES, LANE_BYTES, LANES, SEASON_BYTES } from './kernel/assembly/layout.ts';
import type { ShelterKernel } from './kernel/kernel.ts';
import { GALE_TABLE_NODES, type SeasonOfDirection } from './shelter-directions.ts';
import type { ShelterTile } from './shelter-tile.ts';
import type { ShelterRequest, ShelterResult } from './shelter-types.ts';

/** What the open wind of one season comes to over its directions: mean speed, m/s, and share of hours with a gale. */
export interface OpenSums {
  speedMps: number;
  galeShare: number;
}

/** Sums of one season over the cells of a tile, in the kernel; deficits, so that open ground stays exactly open. */
export interface SeasonSums {
  /** Address of the sums of speed weight * (1 - f), m/s, by leaf state. */
  readonly speed: number;
  /** Address of the sums of gale share less that of open ground. */
  readonly gale: number;
}

export const takeSums = (kernel: ShelterKernel, cells: number): SeasonSums => ({
  speed: kernel.take(cells * LANE_BYTES),
  gale: kernel.take(cells * 4),
});

export function clearSums({ bytes }: ShelterKernel, { speed, gale }: SeasonSums, cells: number): void {
  bytes.fill(0, speed, speed + cells * LANE_BYTES);
  bytes.fill(0, gale, gale + cells * 4);
}

/** Adds one direction over open ground. Mutates `open`. */
export function addOpen(open: OpenSums, season: SeasonOfDirection | null): void {
  if (!season) return;
  open.speedMps += season.speedWeightMps;
  open.galeShare += season.frequency * season.galeShare[GALE_NODES];
}

/** Room in the kernel for what one direction adds to the seasons: addresses. */
export interface Additions {
  /** Of what each of up to two seasons takes, see SEASON_BYTES. */
  readonly seasons: number;
  /** Of a gale table for each. */
  readonly tables: readonly number[];
}

export const takeAdditions = (kernel: ShelterKernel): Additions => ({
  seasons: kernel.take(2 * SEASON_BYTES),
  tables: [kernel.take(4 * GALE_TABLE_NODES), kernel.take(4 * GALE_TABLE_NODES)],
});

/** What a season has of one direction, and what each leaf state takes of it. */
export interface SeasonShare {
  readonly sums: SeasonSums;
  readonly of: SeasonOfDirection | null;
  /** Fewer than there are lanes: the others count nothing. */
  readonly phaseWeights: readonly number[];
}

/** Adds one direction, whose deficits lie in the tile, to the sums of both seasons. */
export function addSeasons(kernel: ShelterKernel, room: Additions, shares: readonly SeasonShare[]): void {
  const { floats, integers } = kernel;
  let seasons = 0;
  for (const { sums, of, phaseWeights } of shares) {
    if (!of || phaseWeights.every((weight) => weight === 0)) continue;
    const at = (room.seasons + seasons * SEASON_BYTES) / 4;
    const table = room.tables[seasons];
    for (let lane = 0; lane < LANES; lane++) {
      const share = phaseWeights[lane] ?? 0;
      floats[at + 4 + lane] = of.speedWeightMps * share;
      floats[at + 8 + lane] = of.frequency * share;
    }
    // The chance of a gale grows with the share of open wind, so the last node is the greatest.
    const never = of.galeShare[of.galeShare.length - 1] === 0;
    if (!never) floats.set(of.galeShare, table / 4);
    integers[at] = sums.speed;
    integers[at + 1] = sums.gale;
    integers[at + 2] = never ? 0 : table;
    seasons++;
  }
  if (seasons > 0) kernel.addDirection(seasons, room.seasons);
}

/** Writes the three bands of a tile's cells. Mutates `result`. */
export function writeBands(
  { scene }: ShelterRequest,
  { floats }: ShelterKernel,
  tile: ShelterTile,
  sums: readonly SeasonSums[],
  [openGrowing, openRest]: readonly OpenSums[],
  [growingHours, restHours]: readonly number[],
  { windShare, galeHours }: ShelterResult,
): void {
  const cells = windShare.length / 3;
  const growingRun = openGrowing.speedMps * growingHours;
  const restRun = openRest.speedMps * restHours;
  const run = growingRun + restRun;
  const [speedGrowing, speedRest] = sums.map(({ speed }) => speed / 4);
  const [galeGrowing, galeRest] = sums.map(({ gale }) => gale / 4);
  const cut = (at: number, open: number): number => {
    if (!(open > 0)) return 0;
    let deficit = 0;
    for (let lane = 0; lane < LANES; lane++) deficit += floats[at + lane];
    return deficit / open;
  };
  const solids = scene.barriers.filter(
    (barrier) =>
      barrier.shape === 'area' && barrier.porosityOn === 0 && barrier.porosityOff === 0 && barrier.baseM <= 0,
  );
  const groundHasHoles = scene.ground.values.some(Number.isNaN);
  for (let i = 0; i < tile.rows * tile.columns; i++) {
    const cell = tile.firstCell + i;
    const x = tile.firstXM + (i % tile.columns) * tile.cellM;
    const y = tile.rowYM[Math.floor(i / tile.columns)];
    if (
      (groundHasHoles && Number.isNaN(sampleGrid(scene.ground, x, y))) ||
      solids.some((solid) => isInsideRing(x, y, solid.xyM))
    ) {
      for (let band = 0; band < 3; band++) {
        windShare[band * cells + cell] = Number.NaN;
        galeHours[band * cells + cell] = Number.NaN;
      }
      continue;
    }
    const cutGrowing = cut(speedGrowing + i * LANES, openGrowing.speedMps);
    const cutRest = cut(speedRest + i * LANES, openRest.speedMps);
    windShare[cell] = 1 - cutGrowing;
    windShare[cells + cell] = 1 - cutRest;
    windShare[2 * cells + cell] = 1 - (run > 0 ? (growingRun * cutGrowing + restRun * cutRest) / run : 0);
    const growing = Math.max(0, openGrowing.galeShare + floats[galeGrowing + i]) * growingHours;
    const rest = Math.max(0, openRest.galeShare + floats[galeRest + i]) * restHours;
    galeHours[cell] = growing;
    galeHours[cells + cell] = rest;
    galeHours[2 * cells + cell] = growing + rest;
  }
}
