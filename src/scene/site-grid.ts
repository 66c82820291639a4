import type { Frame } from '../geo/frame.ts';
import { type LocalBox, localBoxOf } from '../geo/local-box.ts';
import { cellCount, type GridSpec, gridCovering } from '../numeric/grid.ts';
import { computeArea } from '../site/chosen-features.ts';
import type { SiteDocument } from '../site/document.ts';
import { BadInputError } from '../units/bad-input.ts';

/** A grid of float32 layers beyond this many cells does not fit where the engines run. */
const MOST_CELLS = 25e6;

/** The box that rasters cover: the chosen fields, or all that is drawn where there are none. */
function coveredBox(
  document: SiteDocument,
  frame: Frame,
  choice: { readonly field?: string; readonly layout?: string | null } = {},
): LocalBox {
  // computeArea throws where nothing is drawn, so there is a box.
  return localBoxOf(frame, computeArea(document, choice).places)!;
}

/**
 * Cells over the chosen fields, snapped outward to whole cells.
 * @throws BadInputError when nothing is drawn, there is no such field, the cell is not positive or there are too many.
 */
export function siteGrid(
  document: SiteDocument,
  frame: Frame,
  choice: {
    readonly cellM: number;
    readonly field?: string;
    readonly layout?: string | null;
  },
): GridSpec {
  const { cellM } = choice;
  if (!(cellM > 0)) throw new BadInputError(`The cell is ${cellM} m; expected a size above 0.`);
  const grid = gridCovering(coveredBox(document, frame, choice), cellM);
  if (cellCount(grid) > MOST_CELLS)
    throw new BadInputError(
      `Cells of ${cellM} m over ${Math.round(grid.columns * cellM)} × ${Math.round(grid.rows * cellM)} m are ${(cellCount(grid) / 1e6).toFixed(0)} million; expected at most ${MOST_CELLS / 1e6} million: take larger cells or one field.`,
    );
  return grid;
}
