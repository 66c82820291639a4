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
function buildingPrisms(prisms: PrismSet): number[] {
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

/** 1 for each cell of the tile (r * stride + c) that has no light value: in a building, or where the ground is missing. */
export function cellsWithoutLight(tile: ShadowTile, prisms: PrismSet): Uint8Array {
  const { columns, rows, stride, cellM, rowM, westM, northM, readingZM } = tile;
  const hidden = new Uint8Array(rows * stride);
  for (let r = 0; r < rows; r++)
    for (let i = r * stride; i < r * stride + columns; i++) if (Number.isNaN(readingZM[i])) hidden[i] = 1;
  for (const p of buildingPrisms(prisms)) {
    const [west, south, east, north] = ringBox(prisms, p);
    const c0 = Math.max(0, Math.floor((west - westM) / cellM));
    const c1 = Math.min(columns, Math.ceil((east - westM) / cellM));
    const r0 = Math.max(0, Math.floor((northM - north) / rowM));
    const r1 = Math.min(rows, Math.ceil((northM - south) / rowM));
    for (let r = r0; r < r1; r++)
      for (let c = c0; c < c1; c++) {
        const i = r * stride + c;
        if (prismHolds(prisms, p, westM + (c + 0.5) * cellM, northM - (r + 0.5) * rowM, readingZM[i]))
          hidden[i] = 1;
      }
  }
  return hidden;
}

function ringBox({ ringStart, ringXY }: PrismSet, index: number): [number, number, number, number] {
  let west = Number.POSITIVE_INFINITY;
  let south = Number.POSITIVE_INFINITY;
  let east = Number.NEGATIVE_INFINITY;
  let north = Number.NEGATIVE_INFINITY;
  for (let k = ringStart[index]; k < ringStart[index + 1]; k++) {
    west = Math.min(west, ringXY[2 * k]);
    east = Math.max(east, ringXY[2 * k]);
    south = Math.min(south, ringXY[2 * k + 1]);
    north = Math.max(north, ringXY[2 * k + 1]);
  }
  return [west, south, east, north];
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
