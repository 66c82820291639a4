/** The woods around, laid on a tile in the kernel along one ray. */
import { type CanopyField, computeCanopyField } from './canopy-field.ts';
import { type CanopyView, canopyDepths, canopyView, lookThroughCanopy, type TileBox } from './canopy-view.ts';
import { PLANE_BYTES } from './kernel/assembly/layout.ts';
import type { Kernel } from './kernel/kernel.ts';
import type { LoadedRay, LoadedTile } from './kernel/load.ts';
import type { LightScene } from './light-types.ts';
import type { ShadowTile } from './shadow-tile.ts';

/** What the stations of a tile have seen, ray by ray (address of the ray): in leaf, then leafless; null: open light. */
type Seen = Map<number, Float32Array | null>;

export interface WoodsAround {
  readonly field: CanopyField;
  readonly scene: LightScene;
  readonly leafClass: number;
  readonly readingHeightM: number;
  readonly views: WeakMap<ShadowTile, CanopyView>;
  /** Kept for a field of light that is changed again and again: some 5 kB a tile and ray that meets woods. */
  readonly seen: WeakMap<ShadowTile, Seen> | null;
}

/** Null where no woods stand around. @param keeps whether what is seen is kept for the next time */
export function woodsAround(scene: LightScene, readingHeightM: number, keeps: boolean): WoodsAround | null {
  const field = scene.surroundings && computeCanopyField(scene.surroundings, scene.ground);
  if (!field) return null;
  return {
    field,
    scene,
    leafClass: scene.surroundings.leafClass,
    readingHeightM,
    views: new WeakMap(),
    seen: keeps ? new WeakMap() : null,
  };
}

/**
 * Lays the woods on the layer of everything.
 * @param depths room in the kernel for a float a cell; @param clip as in the kernel's `cast`
 * @param box where cells are asked for; absent: on the whole tile
 */
export function layWoods(
  kernel: Kernel,
  woods: WoodsAround,
  at: LoadedTile,
  ray: LoadedRay,
  classCount: number,
  depths: number,
  clip: number,
  box?: TileBox,
): void {
  const { field, leafClass } = woods;
  const view = viewOf(woods, at.tile);
  if (!look(woods, view, at.tile, ray)) return;
  const evergreen = field.depthOnPerM === field.depthOffPerM;
  lay(view.lightOn, 1, evergreen ? 1 : 0);
  if (!evergreen) lay(view.lightOff, 0, 1);

  function lay(light: Float32Array, on: number, off: number): void {
    const ofCells = kernel.floats.subarray(depths / 4, (depths + PLANE_BYTES) / 4);
    canopyDepths(view, light, at.tile, ofCells, box);
    kernel.layPath(at.address, ray.address, depths, on, off, leafClass, classCount, clip);
  }
}

function viewOf({ views, field, scene, readingHeightM }: WoodsAround, tile: ShadowTile): CanopyView {
  let view = views.get(tile);
  if (!view) {
    view = canopyView(field, scene.ground, tile, readingHeightM);
    views.set(tile, view);
  }
  return view;
}

/** Looks along a ray, or remembers what was seen; false where all is open. */
function look({ field, seen }: WoodsAround, view: CanopyView, tile: ShadowTile, ray: LoadedRay): boolean {
  if (!seen) return lookThroughCanopy(field, view, ray.direction.ray);
  let ofTile = seen.get(tile);
  if (!ofTile) {
    ofTile = new Map();
    seen.set(tile, ofTile);
  }
  const known = ofTile.get(ray.address);
  const { lightOn, lightOff } = view;
  if (known) {
    lightOn.set(known.subarray(0, lightOn.length));
    lightOff.set(known.subarray(lightOn.length));
    return true;
  }
  if (known === null) return false;
  const any = lookThroughCanopy(field, view, ray.direction.ray);
  const kept = any ? new Float32Array(2 * lightOn.length) : null;
  kept?.set(lightOn);
  kept?.set(lightOff, lightOn.length);
  ofTile.set(ray.address, kept);
  return any;
}
