/** Single rays through the kernel: what it takes from the cells of a field, and the exact paths to hold it against. */
import {
  CROWN_BASE,
  CROWN_DEPTH_OFF,
  CROWN_DEPTH_ON,
  CROWN_FORMS,
  CROWN_GROUND,
  CROWN_RADIUS,
  CROWN_STRIDE,
  CROWN_TOP,
  CROWN_X,
  CROWN_Y,
} from '../../src/crowns/crown-set.ts';
import { crownPathM } from '../../src/crowns/path-length.ts';
import { prismPathM } from '../../src/crowns/prism-path.ts';
import { PRISM_DEPTH_OFF, PRISM_DEPTH_ON, PRISM_STRIDE } from '../../src/crowns/prism-set.ts';
import { type LoadedTile, loadTile } from '../../src/light/kernel/load.ts';
import { lightPlan, type PlannedDirection } from '../../src/light/light-plan.ts';
import type { LightScene } from '../../src/light/light-types.ts';
import { castThings, LAYER_ALL, type LoadedScene, loadScene } from '../../src/light/loaded-scene.ts';
import { ALL_ROWS, rayDirection, shadowTile } from '../../src/light/shadow-tile.ts';
import { cellCentreX, cellCentreY, type GridSpec, sampleGrid } from '../../src/numeric/grid.ts';

export interface Aim {
  readonly altitudeRad: number;
  readonly azimuthRad: number;
}

/** A scene in the kernel with rays of our own instead of the year's. @param leafShare by state and class */
export function loadedWith(
  scene: LightScene,
  aims: readonly Aim[],
  leafShare: readonly number[],
): LoadedScene {
  const states = leafShare.length / scene.leaf.classCount;
  const nothing = new Float64Array(states);
  const sun = aims.map(
    ({ altitudeRad, azimuthRad }): PlannedDirection => ({
      ray: rayDirection(altitudeRad, azimuthRad, 0),
      gridAzimuthRad: azimuthRad,
      states,
      leafShare: Float64Array.from(leafShare),
      slots: Array.from({ length: states }, () => Uint8Array.of(0)),
      weights: Array.from({ length: states }, () => Float64Array.of(1)),
      growingHours: nothing,
      growingMol: nothing,
    }),
  );
  return loadScene(scene, { ...lightPlan(scene), sun, sky: [] });
}

export interface CellLoss {
  /** Where the ray starts. */
  readonly o: readonly [number, number, number];
  /** Share of light taken, by leaf state. */
  readonly losses: readonly number[];
}

/** What the kernel takes along its ray k from the cells of a field no larger than a tile. */
export function castOver(loaded: LoadedScene, k: number, grid: GridSpec, readingHeightM: number): CellLoss[] {
  const { kernel, scene, things, rays, z0 } = loaded;
  const tile = shadowTile(grid, ALL_ROWS, 0, 0, scene.ground, readingHeightM);
  const at: LoadedTile = loadTile(kernel, tile, 1, z0);
  const room = kernel.take(4 * tile.stride * tile.rows);
  castThings(loaded, things, at, rays[k], LAYER_ALL);
  const byState = Array.from({ length: rays[k].states }, (_, state) => {
    kernel.lossesOf(at.address, state, room);
    return kernel.floats.slice(room / 4, room / 4 + tile.stride * tile.rows);
  });
  kernel.wipe(at.address, rays[k].address);
  return Array.from({ length: grid.columns * grid.rows }, (_, cell) => {
    const row = Math.floor(cell / grid.columns);
    const column = cell % grid.columns;
    const x = cellCentreX(grid, column);
    const y = cellCentreY(grid, row);
    return {
      o: [x, y, sampleGrid(scene.ground, x, y) + readingHeightM],
      losses: byState.map((losses) => losses[row * tile.stride + column]),
    };
  });
}

/** Metres through crown i from a point along an aim. */
export function throughCrown({ crowns }: LightScene, i: number, [x, y, z]: CellLoss['o'], aim: Aim): number {
  const at = (k: number) => crowns.values[i * CROWN_STRIDE + k];
  const { ux, uy, uz } = rayDirection(aim.altitudeRad, aim.azimuthRad, 0);
  const form = CROWN_FORMS[crowns.form[i]];
  const [fromX, fromY, fromZ] = [x - at(CROWN_X), y - at(CROWN_Y), z - at(CROWN_GROUND)];
  return crownPathM(form, fromX, fromY, fromZ, ux, uy, uz, at(CROWN_BASE), at(CROWN_TOP), at(CROWN_RADIUS));
}

/** Metres through prism p. */
export function throughPrism({ prisms }: LightScene, p: number, [x, y, z]: CellLoss['o'], aim: Aim): number {
  const { ux, uy, uz } = rayDirection(aim.altitudeRad, aim.azimuthRad, 0);
  return prismPathM(prisms, p, x, y, z, ux, uy, uz);
}

/** Optical depth of all that stands on the way, in one leaf state; and whether any of it is solid, and by how much. */
export function depthOfAll(
  scene: LightScene,
  o: CellLoss['o'],
  aim: Aim,
  leafShare: readonly number[],
): { readonly depth: number; readonly solidM: number } {
  let depth = 0;
  let solidM = 0;
  const add = (path: number, leafClass: number, on: number, off: number) => {
    const share = leafShare[leafClass];
    depth += path * (share * on + (1 - share) * off);
  };
  const { crowns, prisms } = scene;
  for (let i = 0; i < crowns.count; i++) {
    const at = (k: number) => crowns.values[i * CROWN_STRIDE + k];
    add(throughCrown(scene, i, o, aim), crowns.leafClass[i], at(CROWN_DEPTH_ON), at(CROWN_DEPTH_OFF));
  }
  for (let p = 0; p < prisms.count; p++) {
    const path = throughPrism(scene, p, o, aim);
    const at = (k: number) => prisms.values[p * PRISM_STRIDE + k];
    if (prisms.solid[p]) solidM = Math.max(solidM, path);
    else add(path, prisms.leafClass[p], at(PRISM_DEPTH_ON), at(PRISM_DEPTH_OFF));
  }
  return { depth, solidM };
}
