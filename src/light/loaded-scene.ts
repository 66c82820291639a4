/** A scene in the kernel's memory, and the pass over one tile: every ray of the year through everything that stands. */

import type { GridSpec } from '../numeric/grid.ts';
import type { Steps } from '../numeric/steps.ts';
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
  readonly things: LoadedThings;
  /** A byte a cell: behind the land. */
  readonly behind: number;
  /** A float a cell: room for the depths of the woods around. */
  readonly woodDepths: number;
}

export function loadScene(scene: LightScene, plan: LightPlan): LoadedScene {
  const kernel = startKernel();
  kernel.empty(EDGE);
  const z0 = lowest(scene.ground.values);
  const things = noThings();
  loadThings(kernel, things, scene.crowns, scene.prisms, everyThing(scene.crowns, scene.prisms), z0);
  const rays = [
    ...loadRays(kernel, plan.sun, plan.classCount, 0, true),
    ...loadRays(kernel, plan.sky, plan.classCount, SKY_SLOTS, false),
  ];
  const behind = kernel.take(EDGE * EDGE);
  const woodDepths = kernel.take(PLANE_BYTES);
  return { kernel, plan, scene, z0, rays, things, behind, woodDepths };
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

/** Looks around from all cells of a grid. @param keeps whether what is seen of the woods is kept for the next time */
export function* lookAround(
  scene: LightScene,
  grid: GridSpec,
  readingHeightM: number,
  keeps = false,
): Steps<Around> {
  const land = yield* computeHorizons(scene.ground, grid, readingHeightM);
  return { land, woods: woodsAround(scene, readingHeightM, keeps) };
}

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
  const { gridAzimuthRad } = ray.direction;
  const { tanAltitude } = ray.direction.ray;
  if (around.land) {
    const behind = kernel.bytes.subarray(loaded.behind, loaded.behind + EDGE * EDGE);
    if (markBehindLand(at.tile, around.land, gridAzimuthRad, tanAltitude, behind))
      kernel.blockByLand(at.address, ray.address, loaded.behind, landSlots, clip);
  }
  if (around.woods) layWoods(kernel, around.woods, at, ray, loaded.plan.classCount, loaded.woodDepths, clip);
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
