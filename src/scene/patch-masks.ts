import type { Frame } from '../geo/frame.ts';
import { type LocalBox, localBoxOf } from '../geo/local-box.ts';
import { cellsInside, ringToLocal } from '../geo/rasterise.ts';
import { cellCount, type GridSpec, gridCovering } from '../numeric/grid.ts';
import type { FeatureId, SiteDocument } from '../site/document.ts';
import { type PatchArea, patchAreas } from '../site/patch-areas.ts';
import type { FieldFeature } from '../site/records/field.ts';
import { siteDefaults } from '../site/records/site.ts';

/** A patch, or the open ground of a field that counts as one, with the cells that belong to it. */
export interface PatchMask {
  readonly id: FeatureId;
  readonly name: string;
  /** Its own reading height, or the one asked for. */
  readonly readingHeightM: number;
  readonly shareToKeep: number;
  /** Share of its cells that must keep that light. */
  readonly areaShare: number;
  /** True where no patch is drawn and the field less what stands on it counts as one. */
  readonly implicit: boolean;
  readonly grid: GridSpec;
  readonly mask: Uint8Array;
}

export interface PatchMaskOptions {
  readonly frame: Frame;
  readonly layout: string | null;
  /** Patches are looked for on these fields; none: anywhere. */
  readonly fields: readonly FieldFeature[];
  /** Reading height of patches that have none of their own, m. */
  readonly readingHeightM: number;
  /** A grid of its own for each patch, of this cell… */
  readonly cellM: number;
  /** …no larger than this many cells: a wide patch gets coarser cells. */
  readonly mostCells?: number;
}

const boxOfPatch = (area: PatchArea, frame: Frame): LocalBox | null =>
  localBoxOf(frame, area.polygons.flat(2));

/** 1 for each cell of the grid whose centre lies in the patch. */
function patchMaskOn(area: PatchArea, frame: Frame, grid: GridSpec): Uint8Array {
  const mask = new Uint8Array(cellCount(grid));
  for (const polygon of area.polygons)
    cellsInside(
      grid,
      polygon.map((ring) => ringToLocal(frame, ring)),
      mask,
    );
  return mask;
}

/** The patches, each on a small grid of its own; a patch too small to hold a cell centre is left out. */
export function patchMasks(document: SiteDocument, options: PatchMaskOptions): PatchMask[] {
  const { frame, layout, fields, readingHeightM, mostCells } = options;
  const areaShare = document.site.lightToKeep?.areaShare ?? siteDefaults.lightToKeep.areaShare;
  return patchAreas(document, layout, fields).flatMap((area) => {
    const box = boxOfPatch(area, frame);
    if (!box) return [];
    const boxM2 = (box.east - box.west) * (box.north - box.south);
    const cellM = mostCells ? Math.max(options.cellM, Math.sqrt(boxM2 / mostCells)) : options.cellM;
    const grid = gridCovering(box, cellM);
    const mask = patchMaskOn(area, frame, grid);
    if (!mask.includes(1)) return [];
    return {
      id: area.id,
      name: area.name,
      readingHeightM: area.readingHeightM ?? readingHeightM,
      shareToKeep: area.lightShareToKeep,
      areaShare,
      implicit: area.implicit,
      grid,
      mask,
    };
  });
}
