/**
 * The woods around, from a surface raster, as one spot sees them: one more piece of foliage, whose path is the exact one
 * through the raster's columns (canopy-field.ts).
 */
import { cellCentreX, cellCentreY, type Grid } from '../numeric/grid.ts';
import { canopyPathM, computeCanopyField } from './canopy-field.ts';
import type { LightScene } from './light-types.ts';
import { type Eye, edge, LEAST_RAD, type SeenPiece, ZENITH_RAD } from './view-from-pieces.ts';

/**
 * @param thing the index the woods go by
 * @returns null where the scene has no woods around, or none above the horizontal of the eye.
 */
export function seenWoods({ surroundings, ground }: LightScene, eye: Eye, thing: number): SeenPiece | null {
  const field = surroundings && computeCanopyField(surroundings, ground);
  if (!field || field.highestM <= eye.zM) return null;
  const pathM = (ux: number, uy: number, uz: number): number => {
    const flat = Math.hypot(ux, uy);
    // Straight up is as good as a hundredth of a degree beside it.
    return flat < 1e-4
      ? canopyPathM(field, eye.xM, eye.yM, eye.zM, 0, 1, 1e4)
      : canopyPathM(field, eye.xM, eye.yM, eye.zM, ux / flat, uy / flat, uz / flat);
  };
  return {
    thing,
    leafClass: surroundings.leafClass,
    solid: false,
    depthOn: surroundings.depthOnPerM,
    depthOff: surroundings.depthOffPerM,
    nearestM: nearestFoliageM(surroundings.canopy, eye),
    azimuthRad: 0,
    halfWidthRad: Math.PI,
    bendsRad: [],
    pathM,
    // What a ray meets, every lower one in the same azimuth meets too. Farther than all else, so that all else hides it.
    span: (gridAzimuthRad) => {
      const meets = (altitudeRad: number) =>
        pathM(
          Math.sin(gridAzimuthRad) * Math.cos(altitudeRad),
          Math.cos(gridAzimuthRad) * Math.cos(altitudeRad),
          Math.sin(altitudeRad),
        ) > 0;
      if (!meets(LEAST_RAD)) return null;
      return {
        lowRad: LEAST_RAD,
        highRad: edge(meets, LEAST_RAD, ZENITH_RAD),
        fromM: Number.POSITIVE_INFINITY,
      };
    },
  };
}

function nearestFoliageM(canopy: Grid, eye: Eye): number {
  let nearest = Number.POSITIVE_INFINITY;
  for (let r = 0, cell = 0; r < canopy.rows; r++)
    for (let c = 0; c < canopy.columns; c++, cell++)
      if (canopy.values[cell] > 0)
        nearest = Math.min(
          nearest,
          Math.hypot(cellCentreX(canopy, c) - eye.xM, cellCentreY(canopy, r) - eye.yM),
        );
  return Math.max(0, nearest - canopy.cellM / 2);
}
