import type { ShelterResult } from './shelter-types.ts';

/** Shares of open wind below which ground counts as sheltered, and the names the summary gives them. */
const SHELTER_LIMITS = { below50: 0.5, below70: 0.7, below85: 0.85 } as const;

/** Bands of a shelter result. */
const SHELTER_BANDS = { growing: 0, rest: 1, year: 2 } as const;
export type ShelterBand = keyof typeof SHELTER_BANDS;

export interface ShelterStatistics {
  /** Cells of the mask that have a value, and their ground area. */
  readonly cells: number;
  readonly areaM2: number;
  /** Mean share of open wind and mean gale hours; NaN without cells. */
  readonly meanShare: number;
  readonly meanGaleHours: number;
  /** Area with less than half, 70 % and 85 % of the open wind, m2. */
  readonly shelteredAreaM2: { readonly [limit in keyof typeof SHELTER_LIMITS]: number };
}

/**
 * Means and sheltered areas of one band over the cells whose centres are in the mask.
 * @param mask 1 where a cell counts; null: all cells. Cells without ground do not count.
 */
export function shelterStatistics(
  result: ShelterResult,
  band: ShelterBand,
  mask: Uint8Array | null = null,
): ShelterStatistics {
  const cells = result.grid.columns * result.grid.rows;
  if (mask && mask.length !== cells)
    throw new RangeError(`A mask of ${cells} cells is expected; got ${mask.length}.`);
  const offset = SHELTER_BANDS[band] * cells;
  const cellArea = result.grid.cellM ** 2;
  const area = { below50: 0, below70: 0, below85: 0 };
  let counted = 0;
  let share = 0;
  let gale = 0;
  for (let cell = 0; cell < cells; cell++) {
    if (mask && !mask[cell]) continue;
    const value = result.windShare[offset + cell];
    if (Number.isNaN(value)) continue;
    counted++;
    share += value;
    gale += result.galeHours[offset + cell];
    if (value < SHELTER_LIMITS.below50) area.below50 += cellArea;
    if (value < SHELTER_LIMITS.below70) area.below70 += cellArea;
    if (value < SHELTER_LIMITS.below85) area.below85 += cellArea;
  }
  return {
    cells: counted,
    areaM2: counted * cellArea,
    meanShare: counted > 0 ? share / counted : Number.NaN,
    meanGaleHours: counted > 0 ? gale / counted : Number.NaN,
    shelteredAreaM2: area,
  };
}
