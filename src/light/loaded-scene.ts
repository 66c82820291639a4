/** A scene in the kernel's memory, and the pass over one tile: every ray of the year through everything that stands. */

import type { GridSpec } from '../numeric/grid.ts';
import type { Steps } from '../numeric/steps.ts';
import type { TileBox } from './canopy-view.ts';
import { type HorizonField, markBehindLand } from './horizon.ts';
import { computeHorizons } from './horizon-sweep.ts';
import { EDGE, PLANE_BYTES } from './kernel/assembly/layout.ts';
import { type Kernel, startKernel } from './kernel/kernel.ts';
import {
  everyThing,
  type LoadedRay,
  type LoadedThings,
  type LoadedTile,
  loadRays,
  loadThings,
  noThings,
} from './kernel/load.ts';
import { layWoods, type WoodsAround, woodsAround } from './lay-woods.ts';
import { LAND_SLOTS, type LightPlan, SKY_SLOTS } from './light-plan.ts';
import type { LightScene } from './light-types.ts';
import type { ShadowTile } from './shadow-tile.ts';

/** How long a pass may run before it yields, ms. */
export const PAUSE_MS = 12;
/** The kernel's two layers, and where a cast may lay. */
export const LAYER_ALL = 0;
export const LAYER_OWN = 1;
export const ANYWHERE = 0;
export const WHERE_TOUCHED = 1;

/** One scene in the kernel, ready for any number of tiles. */
export interface LoadedScene {
  readonly kernel: Kernel;
  readonly plan: LightPlan;
  readonly scene: LightScene;
  /** Elevation from which the kernel counts, m. */
  readonly z0: number;
  /** The sun's, then the sky's. */
  readonly rays: readonly LoadedRay[];
  /** The same of the live plan; none without one. */
  readonly liveRays: readonly LoadedRay[];
  readonly things: LoadedThings;
  /** A byte a cell: behind the land. */
  readonly behind: number;
  /** A float a cell: room for the depths of the woods around. */
  readonly woodDepths: number;
}

/** @param live a second plan of the same scene, to follow a hand with */
export function loadScene(scene: LightScene, plan: LightPlan, live: LightPlan | null = null): LoadedScene {
  const kernel = startKernel();
  kernel.empty(EDGE);
  const z0 = lowest(scene.ground.values);
  const things = noThings();
  loadThings(kernel, things, scene.crowns, scene.prisms, everyThing(scene.crowns, scene.prisms), z0);
  const rays = raysOf(kernel, plan, 0);
  const liveRays = live ? raysOf(kernel, live, rays.length) : [];
  const behind = kernel.take(EDGE * EDGE);
  const woodDepths = kernel.take(PLANE_BYTES);
  return { kernel, plan, scene, z0, rays, liveRays, things, behind, woodDepths };
}

function raysOf(kernel: Kernel, { sun, sky, classCount }: LightPlan, firstIndex: number): LoadedRay[] {
  const ofSun = loadRays(kernel, sun, classCount, 0, true, firstIndex);
  const ofSky = loadRays(kernel, sky, classCount, SKY_SLOTS, false, firstIndex + ofSun.length);
  return [...ofSun, ...ofSky];
}

function lowest(values: Float32Array): number {
  let least = Number.POSITIVE_INFINITY;
  for (const z of values) if (z < least) least = z;
  return least === Number.POSITIVE_INFINITY ? 0 : least;
}

/** What stands around beyond the things drawn; null where nothing rises, and where no woods stand. */
export interface Around {
  readonly land: HorizonField | null;
  readonly woods: WoodsAround | null;
}

/** What a tile keeps of the land by ray: nothing yet, all clear, all behind it, or where the bytes of its cells lie. */
const UNKNOWN = 0;
const CLEAR = -1;
const ALL_BEHIND = -2;

/**
 * Looks around from all cells of a grid.
 * @param keeps whether what is seen of the woods is kept for the next time
 * @param coarse the land as means over whole fields need it
 */
export function* lookAround(
  scene: LightScene,
  grid: GridSpec,
  readingHeightM: number,
  keeps = false,
  coarse = false,
): Steps<Around> {
  const land = yield* computeHorizons(scene.ground, grid, readingHeightM, coarse);
  return { land, woods: woodsAround(scene, readingHeightM, keeps) };
}

/** Whether it is known that no cell of the tile sees past the land along the ray: nothing else can take light then. */
export const landHidesAll = ({ land }: LoadedTile, { index }: LoadedRay): boolean =>
  land?.[index] === ALL_BEHIND;

/** Lays the land and the woods around on the layer of everything. @param landSlots where the land's own hours are kept; -1: nowhere */
export function layAround(
  loaded: LoadedScene,
  at: LoadedTile,
  ray: LoadedRay,
  around: Around,
  landSlots: number,
  clip: typeof ANYWHERE | typeof WHERE_TOUCHED,
): void {
  const { kernel } = loaded;
  if (around.land) layLand(loaded, at, ray, around.land, landSlots, clip);
  if (around.woods) {
    const { classCount } = loaded.plan;
    const box = clip === WHERE_TOUCHED ? touchedBox(loaded) : undefined;
    layWoods(kernel, around.woods, at, ray, classCount, loaded.woodDepths, clip, box);
  }
}

/** Where the layer of what is in hand was touched; the woods' room holds it for a moment. */
function touchedBox({ kernel, woodDepths }: LoadedScene): TileBox {
  kernel.touchedBox(woodDepths);
  const [row, pastRow, column, pastColumn] = kernel.integers.subarray(woodDepths / 4, woodDepths / 4 + 4);
  return { row, pastRow, column, pastColumn };
}

function layLand(
  { kernel, behind: address }: LoadedScene,
  { tile, address: tileAddress, land: kept }: LoadedTile,
  ray: LoadedRay,
  land: HorizonField,
  landSlots: number,
  clip: typeof ANYWHERE | typeof WHERE_TOUCHED,
): void {
  const known = kept ? kept[ray.index] : UNKNOWN;
  if (known === CLEAR) return;
  if (known > 0) {
    kernel.blockByLand(tileAddress, ray.address, known, landSlots, clip);
    return;
  }
  const { gridAzimuthRad } = ray.direction;
  const { tanAltitude } = ray.direction.ray;
  const behind = kernel.bytes.subarray(address, address + EDGE * EDGE);
  const any = markBehindLand(tile, land, gridAzimuthRad, tanAltitude, behind);
  if (any) kernel.blockByLand(tileAddress, ray.address, address, landSlots, clip);
  if (!kept) return;
  const hidden = any ? cellsBehind(tile, behind) : 0;
  if (hidden === 0) kept[ray.index] = CLEAR;
  else if (hidden === tile.rows * tile.columns) kept[ray.index] = ALL_BEHIND;
  else {
    const bytes = tile.rows * tile.stride;
    kept[ray.index] = kernel.take(bytes);
    kernel.bytes.copyWithin(kept[ray.index], address, address + bytes);
  }
}

function cellsBehind({ columns, rows, stride }: ShadowTile, behind: Uint8Array): number {
  let hidden = 0;
  for (let r = 0; r < rows; r++) for (let i = r * stride; i < r * stride + columns; i++) hidden += behind[i];
  return hidden;
}

/**
 * Lays a list of things on one of the kernel's layers, wherever they shade the tile.
 * @param first,end which of them; crowns come before prisms
 */
export function castThings(
  { kernel, plan }: LoadedScene,
  things: LoadedThings,
  at: LoadedTile,
  ray: LoadedRay,
  layer: typeof LAYER_ALL | typeof LAYER_OWN,
  first = 0,
  end = countOf(things),
): void {
  kernel.cast(at.address, ray.address, things.address, first, end, plan.classCount, layer, 0, 0);
}

/** Lays all of a list of things on the layer of everything, but only in the shadow of those in hand, laid before. */
export function castBehind(
  { kernel, plan }: LoadedScene,
  things: LoadedThings,
  hand: LoadedThings,
  at: LoadedTile,
  ray: LoadedRay,
): void {
  const end = countOf(things);
  const inHand = countOf(hand);
  const tile = at.address;
  kernel.cast(tile, ray.address, things.address, 0, end, plan.classCount, LAYER_ALL, hand.address, inHand);
}

const countOf = ({ crownCount, prismCount }: LoadedThings): number => crownCount + prismCount;

/** Adds the losses of the whole year to the sums of a tile; yields the share done. */
export function* addYear(loaded: LoadedScene, at: LoadedTile, around: Around): Steps<void> {
  const { kernel, rays, things } = loaded;
  let pausedAt = performance.now();
  for (let k = 0; k < rays.length; k++) {
    const ray = rays[k];
    layAround(loaded, at, ray, around, ray.ofSun ? LAND_SLOTS : -1, ANYWHERE);
    castThings(loaded, things, at, ray, LAYER_ALL);
    if (kernel.anyTouched()) kernel.addLosses(at.address, ray.address);
    if ((k & 15) !== 15 || performance.now() - pausedAt < PAUSE_MS) continue;
    yield k / rays.length;
    pausedAt = performance.now();
  }
}
