import { type LocalXY, toLocal } from '../geo/frame.ts';
import { cellsInside, ringToLocal } from '../geo/rasterise.ts';
import type { YearLight } from '../light/light-types.ts';
import { cellCentreY, cellCount, type GridSpec } from '../numeric/grid.ts';
import { footprintPieces } from '../scene/build-prisms.ts';
import type { SceneOptions } from '../scene/options.ts';
import { standingAt } from '../scene/things.ts';
import type { SiteDocument } from '../site/document.ts';

/** One year of a field, cell by cell: light, and share of the open wind in the growing season. NaN: no value. */
export interface YearMaps extends Pick<YearLight, 'lightShare' | 'directHours'> {
  readonly windShare: Float32Array;
}

/** What a year comes to over a field. Shares 0 to 1. */
export interface YearFigures {
  /** Share of the field on which the wind of the growing season is cut by 30 % or more. */
  readonly shelteredShare: number;
  readonly meanWindCut: number;
  /** Mean share of open light over the growing season. */
  readonly meanLightShare: number;
  /** Mean hours of direct sun in the year. */
  readonly meanDirectHours: number;
  /** Share of the field under trees, belts and woods, seen from above. */
  readonly canopyShare: number;
}

/** A field counts as sheltered where the wind is cut by this share or more. */
const SHELTERED_FROM = 0.3;

/** The field's means of one year. @param mask 1 for the cells that count. */
export function yearFigures(maps: YearMaps, mask: Uint8Array, canopy: Uint8Array): YearFigures {
  const sums = { cells: 0, lit: 0, windy: 0, sheltered: 0, cut: 0, light: 0, hours: 0, canopy: 0 };
  for (let cell = 0; cell < mask.length; cell++) {
    if (!mask[cell]) continue;
    sums.cells++;
    sums.canopy += canopy[cell];
    if (!Number.isNaN(maps.lightShare[cell])) {
      sums.lit++;
      sums.light += maps.lightShare[cell];
      sums.hours += maps.directHours[cell];
    }
    if (Number.isNaN(maps.windShare[cell])) continue;
    const cut = 1 - maps.windShare[cell];
    sums.windy++;
    sums.cut += cut;
    if (cut >= SHELTERED_FROM) sums.sheltered++;
  }
  const share = (sum: number, of: number) => (of > 0 ? sum / of : Number.NaN);
  return {
    shelteredShare: share(sums.sheltered, sums.windy),
    meanWindCut: share(sums.cut, sums.windy),
    meanLightShare: share(sums.light, sums.lit),
    meanDirectHours: share(sums.hours, sums.lit),
    canopyShare: share(sums.canopy, sums.cells),
  };
}

/** 1 for each cell of a grid that lies under foliage in the options' year, seen from above. */
export function canopyMask(document: SiteDocument, options: SceneOptions, grid: GridSpec): Uint8Array {
  const { frame } = options;
  const mask = new Uint8Array(cellCount(grid));
  const { trees, breaks } = standingAt(document, options);
  for (const { feature, stand } of trees) {
    const [lon, lat] = feature.geometry.coordinates;
    discInside(grid, toLocal(frame, [lon, lat]), stand.radiusM, mask);
  }
  for (const standing of breaks) {
    const { geometry, properties } = standing.feature;
    if (properties.kind === 'wall') continue;
    // Pieces of a belt's outline lie beside each other, holes of a wood inside its ring.
    if (geometry.type === 'Polygon')
      cellsInside(
        grid,
        geometry.coordinates.map((ring) => ringToLocal(frame, ring)),
        mask,
      );
    else for (const ring of footprintPieces(frame, standing)) cellsInside(grid, [ring], mask);
  }
  return mask;
}

/** Sets the cells whose centres lie in a circle. */
function discInside(grid: GridSpec, [x, y]: LocalXY, radiusM: number, mask: Uint8Array): void {
  const { columns, rows, cellM, westM, northM } = grid;
  const firstRow = Math.max(0, Math.ceil((northM - y - radiusM) / cellM - 0.5));
  for (let row = firstRow; row < rows; row++) {
    const dy = cellCentreY(grid, row) - y;
    if (dy < -radiusM) break;
    const half = Math.sqrt(Math.max(0, radiusM ** 2 - dy ** 2));
    const from = Math.max(0, Math.ceil((x - half - westM) / cellM - 0.5));
    const past = Math.min(columns, Math.floor((x + half - westM) / cellM - 0.5) + 1);
    if (past > from) mask.fill(1, row * columns + from, row * columns + past);
  }
}
