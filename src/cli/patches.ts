import { maskOnGrid } from '../batch/area-masks.ts';
import { polygonAreaM2 } from '../geo/geodesic.ts';
import { cellCount, type GridSpec } from '../numeric/grid.ts';
import { type PatchMask, patchMasks } from '../scene/patch-masks.ts';
import type { FeatureId } from '../site/document.ts';
import { patchAreas } from '../site/patch-areas.ts';
import type { Prepared } from './prepare.ts';

/** A patch with what must be computed for it: nothing where the command's own grid has its cells at its height. */
export interface PatchToSum extends Omit<PatchMask, 'grid'> {
  readonly areaM2: number;
  /** Cells of the mask. */
  readonly grid: GridSpec;
  /** True where the grid is one of its own, to be computed apart. */
  readonly apart: boolean;
}

/**
 * The patches on the chosen fields.
 * @param heightOf the height at which a patch is read, by its feature's id, or null for the command's own.
 */
export function patchesToSum(
  { site, frame, grid, fields, scene }: Prepared,
  commandHeightM: number,
  heightOf: (patch: PatchMask) => number,
): PatchToSum[] {
  const { document } = site;
  const areas = new Map<FeatureId, number>(
    patchAreas(document, scene.layout, fields).map((area) => [
      area.id,
      area.polygons.reduce((sum, rings) => sum + polygonAreaM2(rings), 0),
    ]),
  );
  const masks = patchMasks(document, {
    frame,
    layout: scene.layout,
    fields,
    readingHeightM: commandHeightM,
    cellM: grid.cellM,
  });
  return masks.map((patch) => {
    const readingHeightM = heightOf(patch);
    const areaM2 = areas.get(patch.id) ?? 0;
    const carried = readingHeightM === commandHeightM ? maskOnGrid(patch.mask, patch.grid, grid) : null;
    return carried
      ? { ...patch, readingHeightM, areaM2, grid, mask: carried, apart: false }
      : { ...patch, readingHeightM, areaM2, apart: true };
  });
}

/** Cells that are computed in all, for the progress. */
export const cellsInAll = (grid: GridSpec, patches: readonly PatchToSum[]): number =>
  patches.reduce((sum, patch) => sum + (patch.apart ? cellCount(patch.grid) : 0), cellCount(grid));
