import { type EvenTable, lookUp } from '../numeric/even-table.ts';
import { cellCount } from '../numeric/grid.ts';
import type { ShelterResult } from '../wind/shelter-types.ts';

/** Water that grass gives off over the growing season on one area, mm. */
export interface EvaporationFigures {
  readonly openMm: number;
  readonly hereMm: number;
  /** Open less here; negative where shelter raises it. */
  readonly reliefMm: number;
  readonly reliefShare: number;
}

/** Mean over the counted cells, each with its own share of open wind; null where none has a value. */
export function evaporationFigures(
  { grid, windShare }: ShelterResult,
  mask: Uint8Array,
  seasonMm: EvenTable,
): EvaporationFigures | null {
  let sum = 0;
  let counted = 0;
  for (let cell = 0; cell < cellCount(grid); cell++) {
    if (mask[cell] === 0 || Number.isNaN(windShare[cell])) continue;
    sum += lookUp(seasonMm, windShare[cell]);
    counted++;
  }
  if (counted === 0) return null;
  const openMm = lookUp(seasonMm, 1);
  const hereMm = sum / counted;
  return { openMm, hereMm, reliefMm: openMm - hereMm, reliefShare: (openMm - hereMm) / openMm };
}
