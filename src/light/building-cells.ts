/**
 * Cells inside buildings, where there is no light to speak of. A wall is solid too, but thin: a cell whose centre
 * happens to lie in it keeps its value.
 */
import {
  PRISM_BASE,
  PRISM_GROUND_A,
  PRISM_GROUND_B,
  PRISM_GROUND_C,
  PRISM_STRIDE,
  PRISM_TOP,
  type PrismSet,
} from '../crowns/prism-set.ts';
import type { ShadowTile } from './shadow-tile.ts';

/** A solid thing with a piece at least this thick (area / longest reach) is a building. */
const BUILDING_THICKNESS_M = 0.6;

/** Indices of the prisms that belong to buildings. */
export function buildingPrisms(prisms: PrismSet): number[] {
  const buildings = new Set<number>();
  for (let p = 0; p < prisms.count; p++)
    if (prisms.solid[p] && thicknessM(prisms, p) >= BUILDING_THICKNESS_M) buildings.add(prisms.thing[p]);
  const found: number[] = [];
  for (let p = 0; p < prisms.count; p++) if (prisms.solid[p] && buildings.has(prisms.thing[p])) found.push(p);
  return found;
}

function thicknessM(prisms: PrismSet, index: number): number {
  const { ringXY } = prisms;
  const first = prisms.ringStart[index];
  const end = prisms.ringStart[index + 1];
  let doubleArea = 0;
  let reach = 0;
  for (let i = first; i < end; i++) {
    const j = i + 1 < end ? i + 1 : first;
    doubleArea += ringXY[2 * i] * ringXY[2 * j + 1] - ringXY[2 * j] * ringXY[2 * i + 1];
    for (let k = first; k < i; k++)
      reach = Math.max(
        reach,
        Math.hypot(ringXY[2 * i] - ringXY[2 * k], ringXY[2 * i + 1] - ringXY[2 * k + 1]),
      );
  }
  return doubleArea / 2 / reach;
}

/** 1 for each cell of the tile whose reading point lies in a building. */
export function cellsInBuildings(
  tile: ShadowTile,
  prisms: PrismSet,
  buildings: readonly number[],
): Uint8Array {
  const inside = new Uint8Array(tile.cells);
  for (const p of buildings) {
    for (let r = 0; r < tile.rows; r++) {
      const y = tile.northM - (r + 0.5) * tile.cellM;
      for (let c = 0; c < tile.columns; c++) {
        const i = r * tile.columns + c;
        if (inside[i]) continue;
        const x = tile.westM + (c + 0.5) * tile.cellM;
        if (prismHolds(prisms, p, x, y, tile.readingZM[i])) inside[i] = 1;
      }
    }
  }
  return inside;
}

function prismHolds(prisms: PrismSet, index: number, x: number, y: number, z: number): boolean {
  const v = index * PRISM_STRIDE;
  const above =
    z -
    (prisms.values[v + PRISM_GROUND_A] +
      prisms.values[v + PRISM_GROUND_B] * x +
      prisms.values[v + PRISM_GROUND_C] * y);
  if (above < prisms.values[v + PRISM_BASE] || above > prisms.values[v + PRISM_TOP]) return false;
  const { ringXY } = prisms;
  const first = prisms.ringStart[index];
  const end = prisms.ringStart[index + 1];
  for (let i = first; i < end; i++) {
    const j = i + 1 < end ? i + 1 : first;
    const ax = ringXY[2 * i];
    const ay = ringXY[2 * i + 1];
    if ((ringXY[2 * j] - ax) * (y - ay) - (ringXY[2 * j + 1] - ay) * (x - ax) < 0) return false;
  }
  return true;
}
