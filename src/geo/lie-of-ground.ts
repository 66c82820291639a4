import {
  cellAt,
  cellCentreX,
  cellCentreY,
  cellCount,
  type Grid,
  gridCovering,
  sampleGrid,
} from '../numeric/grid.ts';
import type { LocalXY } from './frame.ts';
import { boxAround } from './local-box.ts';
import { cellsInside } from './rasterise.ts';
import type { SlopeAspect } from './terrain.ts';

export interface GroundLie {
  readonly lowestM: number;
  readonly highestM: number;
  /** Mean steepness. */
  readonly slopeDeg: number;
  /** The mean way down, degrees clockwise from true north; null where the falls cancel out. */
  readonly aspectDeg: number | null;
}

/** About so many places of an area are looked at. */
const SAMPLES = 1600;
const FINEST_M = 0.5;
/** Below this mean fall the way down says nothing. */
const LEVEL = 1e-4;

/**
 * How the ground of an area lies, from places spread evenly over it, so that one smaller than a cell of the ground has its
 * figures too; null where no ground is known.
 * @param slopes of the ground. @param rings outer ring and holes, local metres.
 */
export function lieOfGround(
  ground: Grid,
  { slopeDeg, aspectDeg }: SlopeAspect,
  rings: readonly (readonly LocalXY[])[],
): GroundLie | null {
  const box = boxAround(rings[0]);
  if (!box) return null;
  const cellM = Math.max(FINEST_M, Math.sqrt(((box.east - box.west) * (box.north - box.south)) / SAMPLES));
  const places = gridCovering(box, cellM);
  const mask = cellsInside(places, rings);
  let [lowestM, highestM] = [Infinity, -Infinity];
  let [slopeSum, eastSum, northSum, count] = [0, 0, 0, 0];
  for (let place = 0; place < cellCount(places); place++) {
    if (!mask[place]) continue;
    const xM = cellCentreX(places, place % places.columns);
    const yM = cellCentreY(places, Math.floor(place / places.columns));
    const elevationM = sampleGrid(ground, xM, yM);
    const cell = cellAt(ground, xM, yM);
    if (cell < 0 || Number.isNaN(elevationM) || Number.isNaN(slopeDeg[cell])) continue;
    count++;
    lowestM = Math.min(lowestM, elevationM);
    highestM = Math.max(highestM, elevationM);
    slopeSum += slopeDeg[cell];
    if (Number.isNaN(aspectDeg[cell])) continue;
    const fall = Math.tan((slopeDeg[cell] * Math.PI) / 180);
    eastSum += fall * Math.sin((aspectDeg[cell] * Math.PI) / 180);
    northSum += fall * Math.cos((aspectDeg[cell] * Math.PI) / 180);
  }
  if (count === 0) return null;
  const fall = Math.hypot(eastSum, northSum) / count;
  return {
    lowestM,
    highestM,
    slopeDeg: slopeSum / count,
    aspectDeg: fall < LEVEL ? null : ((Math.atan2(eastSum, northSum) * 180) / Math.PI + 360) % 360,
  };
}
