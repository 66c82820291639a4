import { boxOfGrid, croppedGrid, type GridSpec, partWithin } from '../numeric/grid.ts';
import type { ShelterScene } from '../wind/shelter-types.ts';

/**
 * A scene of the shelter engine with the ground of some grids alone, and what its shape does to the wind there: that
 * engine asks of them no more than what they are on its cells, and of a whole site they are megabytes to hand over with
 * every job.
 */
export function withGroundNear(scene: ShelterScene, grids: readonly GridSpec[]): ShelterScene {
  const { ground, relief } = scene;
  const boxes = grids.map(boxOfGrid);
  const box = {
    west: Math.min(...boxes.map(({ west }) => west)),
    south: Math.min(...boxes.map(({ south }) => south)),
    east: Math.max(...boxes.map(({ east }) => east)),
    north: Math.max(...boxes.map(({ north }) => north)),
  };
  if (!relief) return { ...scene, ground: croppedGrid(ground, box) };
  const { spec, take } = partWithin(relief, box);
  return {
    ...scene,
    ground: croppedGrid(ground, box),
    relief: {
      ...spec,
      eastEast: take(relief.eastEast),
      eastNorth: take(relief.eastNorth),
      northNorth: take(relief.northNorth),
    },
  };
}
