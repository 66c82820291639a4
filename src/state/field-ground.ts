import { localBoxOf } from '../geo/local-box.ts';
import { cellsInside, ringToLocal } from '../geo/rasterise.ts';
import { cellCount, gridCovering, sampleGrid } from '../numeric/grid.ts';
import type { SiteFeature } from '../site/document.ts';
import type { AppState } from './model.ts';
import { slopeOf } from './picture-raster.ts';
import { cellAt } from './read-out.ts';

export interface FieldGround {
  readonly lowestM: number;
  readonly highestM: number;
  /** Mean steepness, and the mean way down (true azimuth); null where the falls cancel out. */
  readonly slopeDeg: number;
  readonly towardDeg: number | null;
}

const SAMPLES = 1600;

/** How the ground of a drawn area lies; null where no ground is known. */
export function fieldGround(
  state: Pick<AppState, 'ground' | 'frame'>,
  feature: SiteFeature,
): FieldGround | null {
  const { ground, frame } = state;
  if (!ground || feature.geometry.type !== 'Polygon') return null;
  const rings = feature.geometry.coordinates.map((ring) => ringToLocal(frame, ring));
  const box = localBoxOf(
    frame,
    feature.geometry.coordinates[0].map(([lon, lat]) => [lon, lat] as const),
  );
  if (!box) return null;
  const cellM = Math.max(0.5, Math.sqrt(((box.east - box.west) * (box.north - box.south)) / SAMPLES));
  const grid = gridCovering(box, cellM);
  const mask = cellsInside(grid, rings);
  const { slopeDeg, aspectDeg } = slopeOf(ground, frame.convergenceRad);
  let lowestM = Number.POSITIVE_INFINITY;
  let highestM = Number.NEGATIVE_INFINITY;
  let slopeSum = 0;
  let east = 0;
  let north = 0;
  let count = 0;
  for (let cell = 0; cell < cellCount(grid); cell++) {
    if (!mask[cell]) continue;
    const xM = grid.westM + ((cell % grid.columns) + 0.5) * grid.cellM;
    const yM = grid.northM - (Math.floor(cell / grid.columns) + 0.5) * grid.cellM;
    const elevationM = sampleGrid(ground, xM, yM);
    const at = cellAt(ground, xM, yM);
    if (at < 0 || Number.isNaN(elevationM) || Number.isNaN(slopeDeg[at])) continue;
    lowestM = Math.min(lowestM, elevationM);
    highestM = Math.max(highestM, elevationM);
    slopeSum += slopeDeg[at];
    count++;
    if (Number.isNaN(aspectDeg[at])) continue;
    const weight = Math.tan((slopeDeg[at] * Math.PI) / 180);
    east += weight * Math.sin((aspectDeg[at] * Math.PI) / 180);
    north += weight * Math.cos((aspectDeg[at] * Math.PI) / 180);
  }
  if (count === 0) return null;
  const length = Math.hypot(east, north);
  return {
    lowestM,
    highestM,
    slopeDeg: slopeSum / count,
    towardDeg: length / count < 1e-4 ? null : ((Math.atan2(east, north) * 180) / Math.PI + 360) % 360,
  };
}
