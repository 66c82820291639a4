import { boxOfGrid, croppedGrid, type GridSpec } from '../numeric/grid.ts';
import type { ShelterScene } from '../wind/shelter-types.ts';

/**
 * A scene of the shelter engine with the ground of some grids alone: that engine asks of it no more than where it is
 * known, and a whole ground is megabytes to hand over with every job.
 */
export function withGroundNear(scene: ShelterScene, grids: readonly GridSpec[]): ShelterScene {
  const boxes = grids.map(boxOfGrid);
  const box = {
    west: Math.min(...boxes.map(({ west }) => west)),
    south: Math.min(...boxes.map(({ south }) => south)),
    east: Math.max(...boxes.map(({ east }) => east)),
    north: Math.max(...boxes.map(({ north }) => north)),
  };
  return { ...scene, ground: croppedGrid(scene.ground, box) };
}
