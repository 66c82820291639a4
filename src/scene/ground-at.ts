import { cellCentreX, cellCentreY, type Grid, sampleGrid } from '../numeric/grid.ts';

/** Elevation (m) under a thing: bilinear, or where the ground is missing there the nearest cell that has one. */
export function groundAt(ground: Grid, xM: number, yM: number): number {
  const level = sampleGrid(ground, xM, yM);
  if (!Number.isNaN(level)) return level;
  let nearest = 0;
  let nearestM = Number.POSITIVE_INFINITY;
  for (let row = 0; row < ground.rows; row++)
    for (let column = 0; column < ground.columns; column++) {
      const value = ground.values[row * ground.columns + column];
      if (Number.isNaN(value)) continue;
      const awayM = Math.hypot(cellCentreX(ground, column) - xM, cellCentreY(ground, row) - yM);
      if (awayM < nearestM) {
        nearestM = awayM;
        nearest = value;
      }
    }
  return nearest;
}
