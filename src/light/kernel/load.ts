/** Fills the kernel's memory: things, tiles and rays, in the records of assembly/layout.ts. */

import * as crownSet from '../../crowns/crown-set.ts';
import {
  CROWN_BASE,
  CROWN_DEPTH_OFF,
  CROWN_DEPTH_ON,
  CROWN_GROUND,
  CROWN_STRIDE,
  CROWN_TOP,
  type CrownSet,
} from '../../crowns/crown-set.ts';
import type { PrismSet } from '../../crowns/prism-set.ts';
import * as prismSet from '../../crowns/prism-set.ts';
import { BadInputError } from '../../units/bad-input.ts';
import type { PlannedDirection } from '../light-plan.ts';
import type { ShadowTile } from '../shadow-tile.ts';
import * as at from './assembly/layout.ts';
import type { Kernel } from './kernel.ts';

/** Room that is used again and grows when what is to lie in it does. */
export interface Room {
  address: number;
  bytes: number;
}

const emptyRoom = (): Room => ({ address: 0, bytes: 0 });

function makeRoom(kernel: Kernel, room: Room, bytes: number): void {
  if (bytes <= room.bytes) return;
  room.bytes = Math.max(bytes, 2 * room.bytes);
  room.address = kernel.take(room.bytes);
}

/** Crowns and prisms in the kernel's memory. */
export interface LoadedThings {
  readonly crowns: Room;
  readonly prisms: Room;
  readonly rings: Room;
  readonly round: Room;
  /** Of their record (THINGS_*); 0 before anything was loaded. */
  address: number;
  crownCount: number;
  prismCount: number;
}

export const noThings = (): LoadedThings => ({
  crowns: emptyRoom(),
  prisms: emptyRoom(),
  rings: emptyRoom(),
  round: emptyRoom(),
  address: 0,
  crownCount: 0,
  prismCount: 0,
});

/** Which crowns and prisms of a scene; indices into its sets. */
export interface Chosen {
  readonly crowns: ArrayLike<number>;
  readonly prisms: ArrayLike<number>;
}

export const everyThing = (crowns: CrownSet, prisms: PrismSet): Chosen => ({
  crowns: Array.from({ length: crowns.count }, (_, i) => i),
  prisms: Array.from({ length: prisms.count }, (_, i) => i),
});

/** Replaces what is loaded. @param z0 elevation from which the kernel counts */
export function loadThings(
  kernel: Kernel,
  loaded: LoadedThings,
  crowns: CrownSet,
  prisms: PrismSet,
  chosen: Chosen,
  z0: number,
): void {
  loaded.crownCount = chosen.crowns.length;
  loaded.prismCount = chosen.prisms.length;
  makeRoom(kernel, loaded.crowns, 8 * at.CROWN_WORDS * loaded.crownCount);
  makeRoom(kernel, loaded.prisms, 8 * at.PRISM_WORDS * loaded.prismCount);
  let corners = 0;
  for (let k = 0; k < loaded.prismCount; k++) {
    const p = chosen.prisms[k];
    const here = prisms.ringStart[p + 1] - prisms.ringStart[p];
    if (here > kernel.mostCorners())
      throw new BadInputError(
        `A piece of a building, belt or block has ${here} corners; expected at most ${kernel.mostCorners()}.`,
      );
    corners += here;
  }
  makeRoom(kernel, loaded.rings, 16 * corners);
  const count = loaded.crownCount + loaded.prismCount;
  const roundBytes = 16 * (Math.ceil(count / 4) + 1);
  makeRoom(kernel, loaded.round, 4 * roundBytes);
  loaded.address ||= kernel.take(8 * at.THINGS_WORDS);

  const words = kernel.doubles;
  for (let k = 0; k < loaded.crownCount; k++) {
    const i = chosen.crowns[k];
    const from = crowns.values.subarray(i * CROWN_STRIDE, (i + 1) * CROWN_STRIDE);
    const w = loaded.crowns.address / 8 + k * at.CROWN_WORDS;
    words[w + at.CROWN_X] = from[crownSet.CROWN_X];
    words[w + at.CROWN_Y] = from[crownSet.CROWN_Y];
    words[w + at.CROWN_BASE_Z] = from[CROWN_GROUND] + from[CROWN_BASE] - z0;
    words[w + at.CROWN_TOP_Z] = from[CROWN_GROUND] + from[CROWN_TOP] - z0;
    words[w + at.CROWN_FOOT_Z] = from[CROWN_GROUND] - z0;
    words[w + at.CROWN_RADIUS] = from[crownSet.CROWN_RADIUS];
    words[w + at.CROWN_ON] = from[CROWN_DEPTH_ON];
    words[w + at.CROWN_OFF] = from[CROWN_DEPTH_OFF];
    words[w + at.CROWN_FORM] = crowns.form[i];
    words[w + at.CROWN_CLASS] = crowns.leafClass[i];
  }
  let ring = loaded.rings.address;
  for (let k = 0; k < loaded.prismCount; k++)
    ring = loadPrism(words, loaded, k, prisms, chosen.prisms[k], ring, z0);
  loadRound(kernel, loaded, roundBytes);
  const record = loaded.address / 8;
  words[record + at.THINGS_CROWNS] = loaded.crowns.address;
  words[record + at.THINGS_PRISMS] = loaded.prisms.address;
  words[record + at.THINGS_CROWN_COUNT] = loaded.crownCount;
  words[record + at.THINGS_ROUND] = loaded.round.address;
  words[record + at.THINGS_ROUND_BYTES] = roundBytes;
}

/** What is added to a circle's radius and top, m, so that rounding to a float hides nothing within a hundred kilometres. */
const ROUND_SLACK_M = 0.02;

function loadRound(kernel: Kernel, loaded: LoadedThings, roundBytes: number): void {
  const { doubles: words, floats } = kernel;
  const list = roundBytes / 4;
  const first = loaded.round.address / 4;
  const put = (k: number, x: number, y: number, radius: number, top: number): void => {
    floats[first + k] = x;
    floats[first + list + k] = y;
    floats[first + 2 * list + k] = radius + ROUND_SLACK_M;
    floats[first + 3 * list + k] = top + ROUND_SLACK_M;
  };
  for (let k = 0; k < loaded.crownCount; k++) {
    const w = loaded.crowns.address / 8 + k * at.CROWN_WORDS;
    put(
      k,
      words[w + at.CROWN_X],
      words[w + at.CROWN_Y],
      words[w + at.CROWN_RADIUS],
      words[w + at.CROWN_TOP_Z],
    );
  }
  for (let k = 0; k < loaded.prismCount; k++) {
    const w = loaded.prisms.address / 8 + k * at.PRISM_WORDS;
    const acrossM = words[w + at.PRISM_EAST] - words[w + at.PRISM_WEST];
    const alongM = words[w + at.PRISM_NORTH] - words[w + at.PRISM_SOUTH];
    put(
      loaded.crownCount + k,
      words[w + at.PRISM_WEST] + acrossM / 2,
      words[w + at.PRISM_SOUTH] + alongM / 2,
      Math.hypot(acrossM, alongM) / 2,
      words[w + at.PRISM_HIGH_Z],
    );
  }
}

/** @returns the address after the prism's ring. */
function loadPrism(
  words: Float64Array,
  loaded: LoadedThings,
  k: number,
  prisms: PrismSet,
  p: number,
  ring: number,
  z0: number,
): number {
  const from = prisms.values.subarray(p * prismSet.PRISM_STRIDE, (p + 1) * prismSet.PRISM_STRIDE);
  const w = loaded.prisms.address / 8 + k * at.PRISM_WORDS;
  const first = prisms.ringStart[p];
  const end = prisms.ringStart[p + 1];
  const groundA = from[prismSet.PRISM_GROUND_A] - z0;
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  let west = Number.POSITIVE_INFINITY;
  let east = Number.NEGATIVE_INFINITY;
  let south = Number.POSITIVE_INFINITY;
  let north = Number.NEGATIVE_INFINITY;
  for (let c = first; c < end; c++) {
    const x = prisms.ringXY[2 * c];
    const y = prisms.ringXY[2 * c + 1];
    const ground = groundA + from[prismSet.PRISM_GROUND_B] * x + from[prismSet.PRISM_GROUND_C] * y;
    lowest = Math.min(lowest, ground);
    highest = Math.max(highest, ground);
    west = Math.min(west, x);
    east = Math.max(east, x);
    south = Math.min(south, y);
    north = Math.max(north, y);
    words[ring / 8 + 2 * (c - first)] = x;
    words[ring / 8 + 2 * (c - first) + 1] = y;
  }
  words[w + at.PRISM_A] = groundA;
  words[w + at.PRISM_B] = from[prismSet.PRISM_GROUND_B];
  words[w + at.PRISM_C] = from[prismSet.PRISM_GROUND_C];
  words[w + at.PRISM_BASE] = from[prismSet.PRISM_BASE];
  words[w + at.PRISM_TOP] = from[prismSet.PRISM_TOP];
  words[w + at.PRISM_ON] = from[prismSet.PRISM_DEPTH_ON];
  words[w + at.PRISM_OFF] = from[prismSet.PRISM_DEPTH_OFF];
  words[w + at.PRISM_LOW_Z] = lowest + from[prismSet.PRISM_BASE];
  words[w + at.PRISM_HIGH_Z] = highest + from[prismSet.PRISM_TOP];
  words[w + at.PRISM_SOLID] = prisms.solid[p];
  words[w + at.PRISM_CLASS] = prisms.leafClass[p];
  words[w + at.PRISM_RING] = ring;
  words[w + at.PRISM_CORNERS] = end - first;
  words[w + at.PRISM_WEST] = west;
  words[w + at.PRISM_EAST] = east;
  words[w + at.PRISM_SOUTH] = south;
  words[w + at.PRISM_NORTH] = north;
  return ring + 16 * (end - first);
}

/** Where the ground is missing the kernel looks from up here, where nothing stands in the way. */
const ABOVE_ALL_M = 1e6;

/** A tile in the kernel's memory. */
export interface LoadedTile {
  readonly tile: ShadowTile;
  readonly address: number;
  readonly sums: number;
  /** By ray, what is known of the land before it; for a tile that is changed again and again. */
  readonly land: Int32Array | null;
}

/** @param slots how many sums are kept a cell; @param into a tile loaded before, whose room is used again */
export function loadTile(
  kernel: Kernel,
  tile: ShadowTile,
  slots: number,
  z0: number,
  into?: LoadedTile,
): LoadedTile {
  const address = into?.address ?? kernel.take(8 * at.TILE_WORDS);
  const sums = into?.sums ?? kernel.take(slots * at.PLANE_BYTES);
  const reading = into ? kernel.doubles[into.address / 8 + at.TILE_READING] : kernel.take(at.PLANE_BYTES);
  const words = kernel.doubles;
  const w = address / 8;
  words[w + at.TILE_COLUMNS] = tile.columns;
  words[w + at.TILE_ROWS] = tile.rows;
  words[w + at.TILE_STRIDE] = tile.stride;
  words[w + at.TILE_CELL_M] = tile.cellM;
  words[w + at.TILE_ROW_M] = tile.rowM;
  words[w + at.TILE_WEST] = tile.westM;
  words[w + at.TILE_NORTH] = tile.northM;
  words[w + at.TILE_LOWEST_Z] = tile.lowestM - z0;
  words[w + at.TILE_HIGHEST_Z] = tile.highestM - z0;
  words[w + at.TILE_GRID_NORTH] = tile.gridNorthM;
  words[w + at.TILE_ROW0] = tile.gridRow0;
  words[w + at.TILE_ROW_STEP] = tile.gridRowStep;
  words[w + at.TILE_READING] = reading;
  words[w + at.TILE_SUMS] = sums;
  const { floats } = kernel;
  for (let i = 0; i < tile.readingZM.length; i++) {
    const z = tile.readingZM[i] - z0;
    floats[reading / 4 + i] = Number.isNaN(z) ? ABOVE_ALL_M : z;
  }
  floats.fill(0, sums / 4, (sums + slots * at.PLANE_BYTES) / 4);
  return { tile, address, sums, land: null };
}

/** A ray in the kernel's memory. */
export interface LoadedRay {
  /** Its place among all rays of a scene. */
  readonly index: number;
  readonly address: number;
  readonly direction: PlannedDirection;
  readonly ofSun: boolean;
  /** The first of the direction's leaf states that this ray is of, and how many. */
  readonly firstState: number;
  readonly states: number;
}

/**
 * The rays of a list of directions, in their order; a direction with very many leaf states becomes several rays.
 * @param slotShift added to every slot; @param firstIndex of the first ray
 */
export function loadRays(
  kernel: Kernel,
  directions: readonly PlannedDirection[],
  classCount: number,
  slotShift: number,
  ofSun: boolean,
  firstIndex: number,
): LoadedRay[] {
  const rays: LoadedRay[] = [];
  for (const direction of directions)
    for (let first = 0; first < direction.states; first += at.MOST_STATES) {
      const states = Math.min(at.MOST_STATES, direction.states - first);
      const address = loadRay(kernel, direction, first, states, classCount, slotShift);
      rays.push({ index: firstIndex + rays.length, address, direction, ofSun, firstState: first, states });
    }
  return rays;
}

function loadRay(
  kernel: Kernel,
  direction: PlannedDirection,
  firstState: number,
  states: number,
  classCount: number,
  slotShift: number,
): number {
  const { ray, slots, weights, leafShare } = direction;
  let listed = 0;
  for (let s = firstState; s < firstState + states; s++) listed += 1 + 2 * slots[s].length;
  const address = kernel.take(8 * at.RAY_WORDS + 4 * (states * classCount + listed));
  const leaf = address + 8 * at.RAY_WORDS;
  const list = leaf + 4 * states * classCount;
  const { doubles: words, floats, integers } = kernel;
  const w = address / 8;
  words[w + at.RAY_UX] = ray.ux;
  words[w + at.RAY_UY] = ray.uy;
  words[w + at.RAY_UZ] = ray.uz;
  words[w + at.RAY_SX] = ray.sx;
  words[w + at.RAY_SY] = ray.sy;
  words[w + at.RAY_TAN] = ray.tanAltitude;
  words[w + at.RAY_STATES] = states;
  words[w + at.RAY_LEAF] = leaf;
  words[w + at.RAY_SLOTS] = list;
  for (let i = 0; i < states * classCount; i++) floats[leaf / 4 + i] = leafShare[firstState * classCount + i];
  let out = list / 4;
  for (let s = firstState; s < firstState + states; s++) {
    integers[out++] = slots[s].length;
    for (let k = 0; k < slots[s].length; k++) {
      integers[out++] = (slots[s][k] + slotShift) * at.PLANE_BYTES;
      floats[out++] = weights[s][k];
    }
  }
  return address;
}
