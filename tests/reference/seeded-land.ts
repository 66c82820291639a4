/** What stands around the second ten of the seeded scenes: a ridge towards the noon sun, ragged woods. */
import type { Surroundings } from '../../src/light/surroundings.ts';
import { seededRandom } from '../../src/numeric/random.ts';
import { gridOf } from './plain-horizon.ts';

/** Where the scenes' 40 m have their middle, x and y. */
const MIDDLE_M = 20;
const RIDGE_AWAY_M = 70;
const RIDGE_HALF_WIDTH_M = 24;

/** Scenes 11, 13, … 19: a ridge stands before the winter sun. */
export const landHidesSun = (seed: number): boolean => seed > 10 && seed % 2 === 1;

/** Metres by which a ridge raises the land: some 25 degrees high from the field, uneven, aslant. */
export function ridgeM(seed: number, latDeg: number, xM: number, yM: number): number {
  if (!landHidesSun(seed)) return 0;
  const turn = seed % 4 === 1 ? 0.35 : -0.3;
  const noon = latDeg > 0 ? -1 : 1;
  const [x, y] = [xM - MIDDLE_M, yM - MIDDLE_M];
  const ahead = noon * (y * Math.cos(turn) + x * Math.sin(turn));
  const aside = x * Math.cos(turn) - y * Math.sin(turn);
  const off = (ahead - RIDGE_AWAY_M) / RIDGE_HALF_WIDTH_M;
  return (32 + 6 * Math.sin(aside / 30 + seed)) * Math.exp(-0.5 * off * off);
}

/** Woods in columns 2 m wide and 4 to 16 m high, with gaps, 4 to 30 m around the field. Scenes 13 and 18. */
export function woodsAround(seed: number): Surroundings | null {
  if (seed !== 13 && seed !== 18) return null;
  const random = seededRandom(seed);
  const canopy = gridOf(50, 50, 2, (x, y) => {
    const outsideM = Math.max(Math.abs(x), Math.abs(y)) - MIDDLE_M;
    return outsideM > 4 && Math.sin(x / 17 + seed) + Math.cos(y / 13) > 0 ? 4 + 12 * random() : 0;
  });
  return {
    canopy: { ...canopy, westM: canopy.westM + MIDDLE_M, northM: canopy.northM + MIDDLE_M },
    depthOnPerM: 0.25,
    depthOffPerM: 0.0875,
    leafClass: 1,
  };
}
